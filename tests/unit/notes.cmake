firn_test(notes_test
  SOURCES notes_demo_test.cpp notes_lines_test.cpp notes_refused_test.cpp notes_guide_test.cpp
  DEPENDS notation recording)
# Apart, because it reads some ten thousand pits.
firn_test(notes_random_test
  SOURCES notes_random_test.cpp
  DEPENDS notation recording)
