# SPDX-License-Identifier: MIT
# cmake -DCOMPILER=c++ -DPAIR=file.cpp -DINCLUDES=directory|directory -P pair.cmake

file(STRINGS ${PAIR} promise REGEX "^// PROMISE: ")
string(REPLACE "// PROMISE: " "" promise "${promise}")
if(promise STREQUAL "")
  message(FATAL_ERROR "${PAIR} promises no words")
endif()
string(REPLACE "|" ";-isystem;" includes "|${INCLUDES}")
set(compile ${COMPILER} -std=c++20 -Wall -Wextra -Werror -fsyntax-only ${includes})

set(ENV{LC_ALL} C)
execute_process(COMMAND ${compile} ${PAIR} RESULT_VARIABLE failed ERROR_VARIABLE words OUTPUT_VARIABLE words)
if(failed)
  message(FATAL_ERROR "the good twin does not compile:\n${words}")
endif()
execute_process(COMMAND ${compile} -DLAYSHAFT_BAD ${PAIR} RESULT_VARIABLE failed ERROR_VARIABLE words
  OUTPUT_VARIABLE words)
if(NOT failed)
  message(FATAL_ERROR "the bad twin compiles")
endif()
if(NOT words MATCHES "${promise}")
  message(FATAL_ERROR "the compiler does not say \"${promise}\":\n${words}")
endif()
