// Our own functions against libm, which is near enough to compare with and not the same everywhere.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "support/maths.h"

namespace {

using namespace firn;

constexpr double kNear = 1e-13;

void expect_near(double ours, double theirs) {
  EXPECT_LE(std::fabs(ours - theirs), kNear * std::fmax(1.0, std::fabs(theirs))) << theirs;
}

TEST(Maths, LogarithmAndExponential) {
  for (double x = 1e-12; x < 1e12; x *= 1.37) {
    expect_near(log_of(x), std::log(x));
    expect_near(exp_of(log_of(x)) / x, 1.0);
  }
  for (double x = -30; x < 30; x += 0.0371) expect_near(exp_of(x) / std::exp(x), 1.0);
  EXPECT_EQ(log_of(1.0), 0.0);
  EXPECT_EQ(exp_of(0.0), 1.0);
}

TEST(Maths, PowersOfThePublishedFormulas) {
  for (const double p : {1.73, 2.11, 5.13, 3.15, -2.1}) {
    for (double x = 0.001; x < 40; x *= 1.13) expect_near(power(x, p) / std::pow(x, p), 1.0);
  }
}

TEST(Maths, WholeDegrees) {
  for (std::int32_t d = 0; d <= 90; ++d) {
    expect_near(sine_of_degrees(d), std::sin(d * kPi / 180));
    expect_near(cosine_of_degrees(d), std::cos(d * kPi / 180));
  }
  EXPECT_EQ(sine_of_degrees(0), 0.0);
  EXPECT_EQ(sine_of_degrees(90), 1.0);
  EXPECT_EQ(cosine_of_degrees(90), 0.0);
  EXPECT_EQ(sine_of_degrees(-5), 0.0);
  EXPECT_EQ(sine_of_degrees(INT32_MAX), 1.0);
}

TEST(Maths, NothingOutsideIsTakenForANumber) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinite = std::numeric_limits<double>::infinity();
  for (const double x : {0.0, -1.0, nan, infinite, -infinite}) EXPECT_EQ(log_of(x), 0.0);
  EXPECT_EQ(exp_of(nan), 0.0);
  EXPECT_EQ(exp_of(-infinite), 0.0);
  EXPECT_EQ(exp_of(infinite), exp_of(700));
  EXPECT_EQ(power(-2, 2), 0.0);
  EXPECT_EQ(power(nan, 2), 0.0);
  EXPECT_EQ(square_root(-4), 0.0);
  EXPECT_EQ(square_root(2), std::sqrt(2.0));
}

TEST(Maths, RoundsHalfAwayFromZeroAndStaysWithin) {
  EXPECT_EQ(rounded(2.5), 3);
  EXPECT_EQ(rounded(-2.5), -3);
  EXPECT_EQ(rounded(2.4999), 2);
  EXPECT_EQ(rounded(1e300), INT32_MAX);
  EXPECT_EQ(rounded(-1e300), -INT32_MAX);
  EXPECT_EQ(rounded(std::numeric_limits<double>::quiet_NaN()), 0);
}

}  // namespace
