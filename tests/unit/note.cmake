firn_test(note_test
  SOURCES note_test.cpp
  DEPENDS note)
