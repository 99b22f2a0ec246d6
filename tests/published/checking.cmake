firn_test(published_checking_test
  SOURCES checking_test.cpp ../pits.cpp
  DEPENDS support pit checking)
