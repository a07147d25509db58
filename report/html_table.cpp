#include "report/html_table.hpp"

#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "report/html_text.hpp"

namespace report {

std::string tone_class(Tone tone) {
  switch (tone) {
    case Tone::within:
      return "within";
    case Tone::over:
      return "over";
    case Tone::undecided:
      return "open";
    case Tone::plain:
    case Tone::label:
      break;
  }
  return "";
}

std::string exact(double value) {
  if (std::isnan(value)) return "unset";
  if (std::isinf(value)) return value > 0.0 ? "unlimited" : "unlimited below";
  return fmt::format("{}", value);
}

std::string html(const HtmlTable& table) {
  const auto is_number = [&](std::size_t i) {
    return i < table.head.size() && table.head[i].rfind('#', 0) == 0;
  };
  std::string out = fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"{0}\">\n"
      "<table><caption><span>{0}</span></caption>\n<thead><tr>",
      escaped(table.caption));
  for (std::size_t i = 0; i < table.head.size(); ++i) {
    out += is_number(i) ? fmt::format("<th scope=\"col\" class=\"n\">{}</th>",
                                      escaped(table.head[i].substr(1)))
                        : fmt::format("<th scope=\"col\">{}</th>", escaped(table.head[i]));
  }
  out += "</tr></thead>\n<tbody>\n";
  for (const HtmlRow& row : table.rows) {
    out += fmt::format("<tr{}{}>", row.attributes.empty() ? "" : " ", row.attributes);
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      out += i == 0
                 ? fmt::format("<th scope=\"row\">{}</th>", row.cells[i])
                 : fmt::format("<td{}>{}</td>", is_number(i) ? " class=\"n\"" : "", row.cells[i]);
    }
    out += "</tr>\n";
  }
  return out + "</tbody></table></div>\n";
}

std::string html_list(const std::vector<std::string>& items) {
  std::string out = "<ul class=\"flat\">\n";
  for (const std::string& item : items) out += fmt::format("<li>{}</li>\n", escaped(item));
  return out + "</ul>\n";
}

std::string html_section(const std::string& id, const std::string& heading,
                         const std::string& content) {
  return fmt::format(
      "<section id=\"{0}\" aria-labelledby=\"{0}-head\">\n<h2 id=\"{0}-head\">{1}</h2>\n{2}"
      "</section>\n",
      id, escaped(heading), content);
}

}  // namespace report
