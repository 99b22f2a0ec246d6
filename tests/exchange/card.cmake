firn_test(card_test
  SOURCES card_test.cpp
  DEPENDS card notation recording)
foreach(test card_test)
  target_include_directories(${test} PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")
endforeach()
