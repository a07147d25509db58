#pragma once

#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

namespace fea {

/// What a model's beams, or its springs, are for assembly; those that two models have in common are
/// shared.
template <class Part>
class SharedParts {
 public:
  class Iterator {
   public:
    explicit Iterator(const std::shared_ptr<const Part>* at) : at_(at) {}
    const Part& operator*() const { return **at_; }
    Iterator& operator++() {
      ++at_;
      return *this;
    }
    bool operator!=(const Iterator& other) const { return at_ != other.at_; }

   private:
    const std::shared_ptr<const Part>* at_;
  };

  void reserve(std::size_t n) { parts_.reserve(n); }
  void push_back(std::shared_ptr<const Part> part) { parts_.push_back(std::move(part)); }
  [[nodiscard]] std::size_t size() const { return parts_.size(); }
  const Part& operator[](std::size_t i) const { return *parts_[i]; }
  [[nodiscard]] const Part& at(std::size_t i) const { return *parts_.at(i); }
  [[nodiscard]] const std::shared_ptr<const Part>& shared(std::size_t i) const { return parts_[i]; }
  [[nodiscard]] Iterator begin() const { return Iterator(parts_.data()); }
  [[nodiscard]] Iterator end() const { return Iterator(parts_.data() + parts_.size()); }

 private:
  std::vector<std::shared_ptr<const Part>> parts_;
};

}  // namespace fea
