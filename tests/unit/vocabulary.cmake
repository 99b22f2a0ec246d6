firn_test(vocabulary_test
  SOURCES vocabulary_schema_test.cpp vocabulary_codes_test.cpp vocabulary_words_test.cpp
  DEPENDS vocabulary)
