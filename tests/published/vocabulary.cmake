firn_test(published_vocabulary_test
  SOURCES vocabulary_test.cpp
  DEPENDS vocabulary notation)
