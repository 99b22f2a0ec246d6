# Compares the committed codes.h with what the schemas say today.
cmake_minimum_required(VERSION 3.25)
execute_process(COMMAND ${EMULATOR} "${PROGRAM}" "${SCHEMAS}" OUTPUT_FILE "${OUTPUT}" COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${CMAKE_COMMAND}" -E compare_files "${OUTPUT}" "${HEADER}" RESULT_VARIABLE differs)
if(differs)
  message(FATAL_ERROR "codes.h is not what the schemas say. Renew it:\n  cp ${OUTPUT} ${HEADER}")
endif()
