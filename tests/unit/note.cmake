firn_test(note_test
  SOURCES note_test.cpp note_words_test.cpp note_lengths_test.cpp ../pits.cpp
  DEPENDS note interpretation)
target_include_directories(note_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
