#include "line_integral.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include <boost/container/small_vector.hpp>

namespace netmend {

namespace {

constexpr double tolerance = 6e-3;          ///< of the sum: what one cell may be off by
constexpr double negligible = 1e-9;         ///< of the sum: not shown in what is foreseen
constexpr std::size_t mostCells = 12000;    ///< evaluated …
constexpr std::size_t mostDearCells = 3000; ///< … where a circuit has several nodes to be solved for
constexpr std::size_t mostParted = 2000;    ///< cells, for what is foreseen
constexpr std::size_t mostErrors = 13;
constexpr double mostDeviations = 3.0; ///< of the common error that are looked at
constexpr double narrowest = 2e-4;     ///< V or log: narrower cells tell nothing

struct Extent {
  enum class Kind : char { any, stretch, high, none };
  Kind kind = Kind::any;
  double low = 0.0;
  double high = 0.0;
};

struct VoltRange {
  double low = 0.0;
  double high = 0.0;
};

struct Cell {
  boost::container::small_vector<Extent, 4> extents;
  boost::container::small_vector<VoltRange, 4> ranges; ///< of what was measured
  double sum = 0.0;                                    ///< as estimated by means
  double bound = 0.0;                                  ///< at most
};

/// Multiplies what is in `product`, by technology, with the share of an extent.
void multiply(std::vector<float>& product, const LineUnknown& unknown, const Extent& extent) {
  const std::size_t n = product.size();
  switch (extent.kind) {
  case Extent::Kind::any:
    return;
  case Extent::Kind::high:
    std::transform(product.begin(), product.end(), unknown.high.begin(), product.begin(),
                   std::multiplies<>());
    return;
  case Extent::Kind::none:
    std::transform(product.begin(), product.end(), unknown.none.begin(), product.begin(),
                   std::multiplies<>());
    return;
  case Extent::Kind::stretch:
    break;
  }
  const auto edge = [&](double volts) {
    const double x = std::clamp((volts - DropDensity::first) / DropDensity::step, 0.0,
                                static_cast<double>(DropDensity::bins));
    const auto i = std::min(static_cast<std::size_t>(x), DropDensity::bins - 1);
    return std::pair{&unknown.below[i * n], static_cast<float>(x - static_cast<double>(i))};
  };
  const auto [low, lowShare] = edge(extent.low);
  const auto [high, highShare] = edge(extent.high);
  for (std::size_t t = 0; t < n; ++t)
    product[t] *= high[t] + highShare * (high[t + n] - high[t]) - low[t] - lowShare * (low[t + n] - low[t]);
}

/// Stretches of voltage with weights, gathered by millivolt. A stretch's cumulative distribution is a ramp:
/// its two kinks are kept, and summed up twice in the end.
class Histogram {
public:
  explicit Histogram(double limit)
      : limit_(limit), kinks_(static_cast<std::size_t>(std::ceil(1e3 * limit)) + 3, 0.0) {}

  void add(VoltRange range, double weight) {
    const double low = std::max(range.low, 0.0);
    if (low >= limit_) {
      over_ += weight;
      return;
    }
    double high = std::max(range.high, low + 1e-6);
    if (high > limit_) {
      const double share = std::isfinite(high) ? (high - limit_) / (high - low) : 0.5;
      over_ += weight * share;
      weight *= 1.0 - share;
      high = limit_;
    }
    const double perBin = weight / std::max(1e3 * (high - low), 1e-6);
    kink(1e3 * low, perBin);
    kink(1e3 * high, -perBin);
  }

  [[nodiscard]] Foreseen foreseen() const {
    std::vector<double> bins;
    double slope = 0.0;
    for (std::size_t i = 0; i + 2 < kinks_.size(); ++i) {
      slope += kinks_[i];
      bins.push_back(std::max(0.0, slope));
    }
    Foreseen result;
    std::size_t last = bins.size();
    while (last > 0 && bins[last - 1] < negligible)
      --last;
    while (result.first < last && bins[result.first] < negligible)
      ++result.first;
    for (std::size_t i = result.first; i < last; ++i)
      result.share.push_back(static_cast<float>(bins[i]));
    result.overLimit = static_cast<float>(over_);
    return result;
  }

private:
  /// From here on each bin holds this much more; of the bin itself, the part above.
  void kink(double at, double perBin) {
    const auto bin = static_cast<std::size_t>(at);
    const double above = 1.0 - (at - static_cast<double>(bin));
    kinks_[bin] += perBin * above;
    kinks_[bin + 1] += perBin * (1.0 - above);
  }

  double limit_;
  double over_ = 0.0;
  std::vector<double> kinks_;
};

class Cubature {
public:
  explicit Cubature(const IntegralRequest& request)
      : request_(request),
        smooth_(std::count_if(request.readings.begin(), request.readings.end(), [](const auto* product) {
                  return product != nullptr && product->hasValue();
                }) == 1) {
    const auto& network = request.network;
    for (const auto& technology : request.networks.technologies)
      weights_.push_back(static_cast<float>(technology.weight));
    product_ = weights_;
    const auto& circuits = request.network.circuits;
    if (std::any_of(circuits.begin(), circuits.end(),
                    [](const Circuit& c) { return c.nodes.size() > 1 && !c.table; }))
      mostCells_ = mostDearCells;
    for (std::size_t i = 0; i < network.good.size(); ++i)
      measured_.push_back({&network.good[i], request.good[i], &request.bench, false});
    for (std::size_t i = 0; i < network.circuits.size(); ++i) {
      if (request.readings[i] != nullptr)
        measured_.push_back(
            {&network.circuits[i], request.readings[i], &request.bench, request.readings[i]->hasValue()});
      if (request.ohms[i] != nullptr)
        measured_.push_back({&network.circuits[i], request.ohms[i], request.ohmsBench, false});
    }
  }

  LineIntegral run() {
    LineIntegral result;
    Cell whole;
    for (const std::size_t unknown : request_.network.unknowns) {
      const auto& u = request_.networks.unknowns[unknown];
      whole.extents.push_back(u.isDrop() ? Extent{} : Extent{Extent::Kind::stretch, u.least, u.most});
    }
    measure(whole, true, true);
    evaluate(whole);
    double scale = 0.0;
    for (const auto& measured : measured_)
      scale += measured.product->logScale();
    std::vector<Cell> open{std::move(whole)};
    std::vector<Cell> done;
    double closed = 0.0;
    double unresolved = 0.0;
    while (!open.empty()) {
      double sum = closed;
      double most = closed;
      for (const auto& cell : open) {
        sum += cell.sum;
        most += cell.bound;
      }
      if (scale + std::log(most) < request_.giveUpBelow) {
        result.log = scale + std::log(std::max(most, 1e-300));
        return result;
      }
      std::vector<Cell> next;
      for (auto& cell : open) {
        const bool worth = cell.bound - cell.sum > tolerance * sum;
        if (worth && evaluated_ >= mostCells_) unresolved += cell.sum;
        if (!worth || evaluated_ >= mostCells_ || !split(cell, next)) {
          closed += cell.sum;
          done.push_back(std::move(cell));
        }
      }
      open = std::move(next);
    }
    result.unresolved = closed > 0.0 ? unresolved / closed : 0.0;
    result.log = std::log(std::max(closed, 1e-300));
    result.log += scale;
    if (request_.wantsForeseen) result.foreseen = foreseen(done, closed);
    return result;
  }

private:
  struct Measured {
    const Circuit* circuit;
    const ReadingProduct* product;
    const LineBench* bench;
    bool moved; ///< by the meter's common error
  };

  [[nodiscard]] UnknownValues corner(const Cell& cell, bool high) const {
    UnknownValues values;
    for (const auto& extent : cell.extents)
      values.push_back(atEnd(extent, high));
    return values;
  }

  [[nodiscard]] double atEnd(const Extent& extent, bool high) const {
    switch (extent.kind) {
    case Extent::Kind::any:
      if (high) return noDrop;
      return DropDensity::first;
    case Extent::Kind::stretch:
      return high ? extent.high : extent.low;
    case Extent::Kind::high:
      return high ? std::max(request_.bench.source.displayLimit.value, DropDensity::last) : DropDensity::last;
    case Extent::Kind::none:
      break;
    }
    return noDrop;
  }

  [[nodiscard]] double massOfCell(const Cell& cell) {
    double fixed = 1.0;
    std::copy(weights_.begin(), weights_.end(), product_.begin());
    for (std::size_t d = 0; d < cell.extents.size(); ++d) {
      const auto& unknown = unknownAt(d);
      if (unknown.isDrop())
        multiply(product_, unknown, cell.extents[d]);
      else
        fixed *= (cell.extents[d].high - cell.extents[d].low) / (unknown.most - unknown.least);
    }
    float sum = 0.0F;
    for (const float p : product_)
      sum += p;
    return fixed * static_cast<double>(sum);
  }

  [[nodiscard]] const LineUnknown& unknownAt(std::size_t d) const {
    return request_.networks.unknowns[request_.network.unknowns[d]];
  }

  [[nodiscard]] VoltRange rangeOf(const Circuit& circuit, const UnknownValues& low,
                                  const UnknownValues& high) const {
    return {voltsAt(circuit, low, request_.bench), voltsAt(circuit, high, request_.bench)};
  }

  void measure(Cell& cell, bool low, bool high) const {
    cell.ranges.resize(measured_.size());
    const auto atLow = low ? corner(cell, false) : UnknownValues{};
    const auto atHigh = high ? corner(cell, true) : UnknownValues{};
    for (std::size_t m = 0; m < measured_.size(); ++m) {
      if (low) cell.ranges[m].low = voltsAt(*measured_[m].circuit, atLow, *measured_[m].bench);
      if (high) cell.ranges[m].high = voltsAt(*measured_[m].circuit, atHigh, *measured_[m].bench);
    }
  }

  void evaluate(Cell& cell) {
    ++evaluated_;
    const double mass = massOfCell(cell);
    cell.sum = cell.bound = 0.0;
    if (!(mass > 0.0)) return;
    double goodMean = mass;
    double goodMost = mass;
    std::array<double, mostErrors> mean{};
    std::array<double, mostErrors> most{};
    const std::size_t errors = smooth_ ? 1 : request_.errors.size();
    for (std::size_t e = 0; e < errors; ++e)
      mean[e] = most[e] = smooth_ ? 1.0 : request_.errors[e].weight;
    for (std::size_t m = 0; m < measured_.size(); ++m) {
      const auto& measured = measured_[m];
      const VoltRange range = cell.ranges[m];
      if (measured.moved && smooth_) {
        mean[0] *= measured.product->smoothMean(range.low, range.high);
        most[0] *= measured.product->smoothMost(range.low, range.high);
        continue;
      }
      if (!measured.moved) {
        goodMean *= measured.product->mean(range.low, range.high);
        goodMost *= measured.product->most(range.low, range.high);
        continue;
      }
      for (std::size_t e = 0; e < errors; ++e) {
        const double offset = request_.errors[e].offset;
        mean[e] *= measured.product->mean(range.low + offset, range.high + offset);
        most[e] *= measured.product->most(range.low + offset, range.high + offset);
      }
    }
    for (std::size_t e = 0; e < errors; ++e) {
      cell.sum += mean[e];
      cell.bound += most[e];
    }
    cell.sum *= goodMean;
    cell.bound *= goodMost;
  }

  /// Along the unknown that moves what was measured most; false where none does.
  bool split(const Cell& cell, std::vector<Cell>& into) {
    const std::size_t d = widest(cell);
    if (d == noUnknown) return false;
    const Extent& extent = cell.extents[d];
    const auto add = [&](const Extent& part, bool low, bool high) {
      Cell child{cell.extents, cell.ranges, 0.0, 0.0};
      child.extents[d] = part;
      measure(child, low, high);
      evaluate(child);
      if (child.bound > 0.0) into.push_back(std::move(child));
    };
    if (extent.kind == Extent::Kind::any) {
      for (const auto& part : partsOfAny(8))
        add(part, true, true);
      return true;
    }
    const double middle = 0.5 * (extent.low + extent.high);
    add({Extent::Kind::stretch, extent.low, middle}, false, true);
    add({Extent::Kind::stretch, middle, extent.high}, true, false);
    return true;
  }

  static std::vector<Extent> partsOfAny(int parts) {
    const double wide = (DropDensity::last - DropDensity::first) / parts;
    std::vector<Extent> result;
    result.reserve(static_cast<std::size_t>(parts) + 2);
    for (int i = 0; i < parts; ++i)
      result.push_back(
          {Extent::Kind::stretch, DropDensity::first + wide * i, DropDensity::first + wide * (i + 1)});
    result.push_back({Extent::Kind::high, 0.0, 0.0});
    result.push_back({Extent::Kind::none, 0.0, 0.0});
    return result;
  }

  /// What no reading has asked for is still to be foreseen: such cells are parted by what was known before.
  std::vector<Cell> withoutAny(const std::vector<Cell>& cells, double least) {
    std::vector<Cell> result;
    std::vector<Cell> open;
    for (const auto& cell : cells)
      if (cell.sum > least) open.push_back(cell);
    while (!open.empty()) {
      Cell cell = std::move(open.back());
      open.pop_back();
      const auto any = std::find_if(cell.extents.begin(), cell.extents.end(),
                                    [](const Extent& extent) { return extent.kind == Extent::Kind::any; });
      if (any == cell.extents.end() || result.size() + open.size() > mostParted) {
        result.push_back(std::move(cell));
        continue;
      }
      const double perMass = cell.sum / massOfCell(cell);
      for (const auto& part : partsOfAny(40)) {
        *any = part;
        cell.sum = perMass * massOfCell(cell);
        if (cell.sum > least) open.push_back(cell);
      }
    }
    return result;
  }

  [[nodiscard]] static bool canSplit(const Extent& extent) {
    return extent.kind == Extent::Kind::any ||
           (extent.kind == Extent::Kind::stretch && extent.high - extent.low > narrowest);
  }

  [[nodiscard]] std::size_t widest(const Cell& cell) const {
    std::size_t best = noUnknown;
    std::size_t candidates = 0;
    for (std::size_t d = 0; d < cell.extents.size(); ++d)
      if (canSplit(cell.extents[d])) {
        best = d;
        ++candidates;
      }
    if (candidates < 2) return best;
    const auto high = corner(cell, true);
    const auto shown = [&](double volts) {
      return std::min(volts, request_.bench.source.displayLimit.value);
    };
    double most = -1.0;
    for (std::size_t d = 0; d < cell.extents.size(); ++d) {
      if (!canSplit(cell.extents[d])) continue;
      auto values = high;
      values[d] = atEnd(cell.extents[d], false);
      double moved = 0.0;
      for (std::size_t m = 0; m < measured_.size(); ++m)
        moved = std::max(moved, shown(cell.ranges[m].high) -
                                    shown(voltsAt(*measured_[m].circuit, values, *measured_[m].bench)));
      if (moved > most) {
        most = moved;
        best = d;
      }
    }
    return best;
  }

  [[nodiscard]] std::vector<Foreseen> foreseen(const std::vector<Cell>& cells, double sum) {
    const auto& circuits = request_.network.circuits;
    std::vector<Histogram> shares(circuits.size(), Histogram(request_.bench.source.displayLimit.value));
    for (const auto& cell : withoutAny(cells, negligible * sum)) {
      const auto low = corner(cell, false);
      const auto high = corner(cell, true);
      const auto weights = errorWeights(cell);
      for (std::size_t i = 0; i < circuits.size(); ++i) {
        const VoltRange range = rangeOf(circuits[i], low, high);
        for (std::size_t e = 0; e < weights.size(); ++e)
          if (const double weight = weights[e] * cell.sum / sum; weight > negligible)
            shares[i].add({range.low + request_.errors[e].offset, range.high + request_.errors[e].offset},
                          weight);
      }
    }
    std::vector<Foreseen> result;
    result.reserve(shares.size());
    for (const auto& share : shares)
      result.push_back(share.foreseen());
    return result;
  }

  /// Of a cell's sum, by common error.
  [[nodiscard]] std::vector<double> errorWeights(const Cell& cell) const {
    std::vector<double> weights;
    for (const auto& error : request_.errors)
      weights.push_back(error.weight);
    for (std::size_t m = 0; m < measured_.size(); ++m) {
      const auto& measured = measured_[m];
      if (!measured.moved) continue;
      const VoltRange range = cell.ranges[m];
      for (std::size_t e = 0; e < weights.size(); ++e)
        weights[e] *= measured.product->mean(range.low + request_.errors[e].offset,
                                             range.high + request_.errors[e].offset);
    }
    double sum = 0.0;
    for (const double w : weights)
      sum += w;
    for (auto& w : weights)
      w = sum > 0.0 ? w / sum : 1.0 / static_cast<double>(weights.size());
    return weights;
  }

  const IntegralRequest& request_;
  bool smooth_; ///< readings meet one circuit: their common error is summed up beforehand
  std::vector<Measured> measured_;
  std::vector<float> weights_; ///< of technologies
  std::vector<float> product_; ///< scratch
  std::size_t mostCells_ = mostCells;
  std::size_t evaluated_ = 0;
};

} // namespace

std::vector<CommonError> commonErrors(Volts standardUncertainty, double step) {
  if (!(standardUncertainty.value > 0.0)) return {{}};
  const double steps = std::ceil(2.0 * mostDeviations / step - 1e-9);
  std::vector<CommonError> result;
  double sum = 0.0;
  for (double i = 0.0; i <= steps; ++i) {
    const double z = mostDeviations * (2.0 * i / steps - 1.0);
    result.push_back({z * standardUncertainty.value, std::exp(-0.5 * z * z)});
    sum += result.back().weight;
  }
  for (auto& error : result)
    error.weight /= sum;
  return result;
}

LineIntegral integrate(const IntegralRequest& request) {
  return Cubature(request).run();
}

} // namespace netmend
