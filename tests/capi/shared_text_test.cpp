// A small buffer may name one long text from many tables. Writing it all out would fill memory.
#include <vector>

#include "schemas/pit_generated.h"
#include "support.h"

namespace {

using capi::Buffer;
using capi::bytes_of;
using capi::Context;

std::string pit_sharing_one_text(std::size_t text_size, int layers) {
  flatbuffers::FlatBufferBuilder builder;
  const auto words = builder.CreateString(std::string(text_size, 'x'));
  std::vector<flatbuffers::Offset<firnbook::Layer>> list;
  for (int i = 0; i < layers; ++i) {
    firnbook::LayerBuilder layer(builder);
    layer.add_words(words);
    list.push_back(layer.Finish());
  }
  const auto all = builder.CreateVector(list);
  firnbook::PitBuilder pit(builder);
  pit.add_layers(all);
  const auto root = pit.Finish();
  firnbook::FinishPitBuffer(builder, root);
  return {reinterpret_cast<const char*>(builder.GetBufferPointer()), builder.GetSize()};
}

TEST(SharedText, IsRefusedWhereItWouldBeWrittenOutAndReadWhereItIsNot) {
  Context context;
  const std::string pit = pit_sharing_one_text(1 << 20, 400);
  ASSERT_LT(pit.size(), std::size_t{2} << 20);
  Buffer report(context), text(context), picture(context);
  ASSERT_EQ(firn_interpret(context, bytes_of(pit), pit.size(), nullptr, report.out(), nullptr), FIRN_OK);
  const std::string read = report.text();
  EXPECT_EQ(firn_notes_write(context, bytes_of(pit), pit.size(), text.out(), nullptr, nullptr),
            FIRN_TOO_LARGE);
  EXPECT_EQ(
      firn_note_write(context, bytes_of(pit), pit.size(), bytes_of(read), read.size(), text.out(), nullptr),
      FIRN_TOO_LARGE);
  ASSERT_EQ(firn_draw_profile(context, bytes_of(pit), pit.size(), bytes_of(read), read.size(), nullptr,
                              picture.out(), nullptr),
            FIRN_OK);
  EXPECT_LT(picture.text().size(), std::size_t{1} << 20);
}

TEST(SharedText, OfAnHonestSizeIsWritten) {
  Context context;
  const std::string pit = pit_sharing_one_text(100, 400);
  Buffer text(context);
  ASSERT_EQ(firn_notes_write(context, bytes_of(pit), pit.size(), text.out(), nullptr, nullptr), FIRN_OK);
  EXPECT_GT(text.text().size(), std::size_t{400} * 100);
}

}  // namespace
