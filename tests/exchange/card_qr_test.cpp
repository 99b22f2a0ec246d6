// The drawing of the code. That others can read it is shown by card_qr.py.
#include <string>

#include "card_help.h"

namespace firn::tests {
namespace {

using exchange::card::qr_svg;
using exchange::card::to_base45;

TEST(CardQr, IsOneDrawingWithATitleAndTheSameEachTime) {
  const std::string text = to_base45(card_of(bytes_of(kQuickPit)));
  std::string svg;
  ASSERT_TRUE(qr_svg(svg, text));
  std::string again;
  ASSERT_TRUE(qr_svg(again, text));
  EXPECT_EQ(svg, again);
  EXPECT_EQ(svg.find("<svg xmlns=\"http://www.w3.org/2000/svg\""), 0u);
  EXPECT_NE(svg.find("<title id=\"title\">"), std::string::npos);
  // The finder's upper edge, seven modules, begins where the quiet zone of four ends.
  EXPECT_NE(svg.find("d=\"M4 4h7v1h-7z"), std::string::npos);
  EXPECT_EQ(svg.substr(svg.size() - 7), "</svg>\n");
}

TEST(CardQr, TextOfOtherCharactersIsRefused) {
  for (const std::string& text : {std::string("lower case"), std::string(), std::string("A\0B", 3),
                                  std::string("A\xC3\xA9"), std::string("A,B")}) {
    std::string svg;
    const Done done = qr_svg(svg, text);
    ASSERT_FALSE(done) << text;
    EXPECT_EQ(done.failure().status, FIRN_BAD_ARGUMENT);
    EXPECT_TRUE(svg.empty());
  }
}

// Version 40 at level M holds 3391 characters (ISO/IEC 18004, from memory; agreed with by the library).
TEST(CardQr, TextTooLongForTheLargestCodeIsRefusedWithWhatToDo) {
  std::string svg;
  EXPECT_TRUE(qr_svg(svg, std::string(3391, 'A')));
  svg.clear();
  for (const std::size_t size : {std::size_t{3392}, std::size_t{4297}, std::size_t{1} << 20}) {
    const Done done = qr_svg(svg, std::string(size, 'A'));
    ASSERT_FALSE(done);
    EXPECT_EQ(done.failure().status, FIRN_TOO_LARGE);
    EXPECT_FALSE(done.failure().remedy.empty());
    EXPECT_TRUE(svg.empty());
  }
}

}  // namespace
}  // namespace firn::tests
