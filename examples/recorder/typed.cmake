# Runs the recorder as two evenings' worth of typing and compares what it says, and what it recorded.
#
#   cmake -D PROGRAM=pit_recorder -D SOURCE=this folder -D WORK=folder to work in -P typed.cmake
cmake_minimum_required(VERSION 3.25)
file(REMOVE_RECURSE "${WORK}")
file(MAKE_DIRECTORY "${WORK}")

function(run script)
  execute_process(COMMAND "${PROGRAM}" larch-bowl.journal --pit larch-bowl-entry ${ARGN}
    WORKING_DIRECTORY "${WORK}" INPUT_FILE "${SOURCE}/${script}.txt"
    OUTPUT_FILE "${WORK}/${script}.said.txt" RESULT_VARIABLE code)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${script}: the recorder left with ${code}")
  endif()
  file(READ "${WORK}/${script}.said.txt" said)
  file(READ "${SOURCE}/${script}.said.txt" expected)
  if(NOT said STREQUAL expected)
    message(FATAL_ERROR "${script}: what it says differs.\n"
      "If that is wanted: cp ${WORK}/${script}.said.txt ${SOURCE}/${script}.said.txt\n${said}")
  endif()
endfunction()

# The first ends in the middle of a test, as when the battery dies; the second goes on from the journal.
run(typed-1)
run(typed-2)

# Recorded line by line and tap by tap, the pit has the bytes of its field notes.
execute_process(COMMAND "${CMAKE_COMMAND}" -E compare_files "${WORK}/pit.firn"
  "${SOURCE}/../../tests/golden/larch-bowl-entry.firn" RESULT_VARIABLE differs)
if(differs)
  message(FATAL_ERROR "${WORK}/pit.firn is not the pit of the field notes")
endif()
