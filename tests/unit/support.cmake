firn_test(support_test
  SOURCES support_text_test.cpp support_place_test.cpp support_checksum_test.cpp support_maths_test.cpp
  DEPENDS support)
