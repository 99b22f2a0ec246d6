firn_test(card_test
  SOURCES card_test.cpp card_damage_test.cpp card_letters_test.cpp card_base45_test.cpp card_qr_test.cpp
          card_growth_test.cpp card_tables_test.cpp card_values_test.cpp
  DEPENDS card notation recording)
# Apart, because it goes through some ten thousand pits.
firn_test(card_random_test
  SOURCES card_random_test.cpp
  DEPENDS card notation recording)
foreach(test card_test card_random_test)
  target_include_directories(${test} PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")
endforeach()

add_executable(card_tool card_tool.cpp)
target_include_directories(card_tool PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")
target_link_libraries(card_tool PRIVATE firn_card firn_notation firn_recording firnbook_warnings)

find_package(Python3 REQUIRED COMPONENTS Interpreter)
add_test(NAME card_letters COMMAND ${Python3_EXECUTABLE} "${CMAKE_CURRENT_SOURCE_DIR}/card_letters.py"
         "${PROJECT_SOURCE_DIR}/core/src/exchange/card")
if(NOT CMAKE_CROSSCOMPILING)
  add_test(NAME card_qr COMMAND ${Python3_EXECUTABLE} "${CMAKE_CURRENT_SOURCE_DIR}/card_qr.py"
           $<TARGET_FILE:card_tool> "${CMAKE_CURRENT_BINARY_DIR}/card_qr"
           "${PROJECT_SOURCE_DIR}/examples/first-pit/larch-bowl-entry.txt"
           "${PROJECT_SOURCE_DIR}/examples/first-pit/tarn-shoulder.txt")
  file(GLOB card_notes CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/tests/readings/pits/*.txt")
  add_test(NAME card_reader COMMAND ${Python3_EXECUTABLE} "${CMAKE_CURRENT_SOURCE_DIR}/card_reader.py"
           "${PROJECT_SOURCE_DIR}" "${FIRNBOOK_FLATC}" $<TARGET_FILE:card_tool>
           "${CMAKE_CURRENT_BINARY_DIR}/card_reader"
           "${PROJECT_SOURCE_DIR}/examples/first-pit/tarn-shoulder.txt" ${card_notes})
endif()
# Apart, because it counts what is taken from memory.
firn_test(card_memory_test SOURCES card_memory_test.cpp DEPENDS card notation recording)
target_include_directories(card_memory_test PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")
