firn_test(recording_test
  SOURCES recording_draft_test.cpp recording_fields_test.cpp recording_edits_test.cpp
          recording_undo_test.cpp recording_layers_test.cpp recording_refused_test.cpp
          recording_random_test.cpp recording_demo_test.cpp recording_journal_test.cpp
          recording_merge_test.cpp recording_conflicts_test.cpp ../pits.cpp
  DEPENDS recording)
target_include_directories(recording_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
