# GLPK ships no CMake file of its own. Gives GLPK::glpk.
find_path(GLPK_INCLUDE_DIR glpk.h)
find_library(GLPK_LIBRARY glpk)
include(FindPackageHandleStandardArgs)
find_package_handle_standard_args(GLPK REQUIRED_VARS GLPK_LIBRARY GLPK_INCLUDE_DIR)
if(GLPK_FOUND AND NOT TARGET GLPK::glpk)
  add_library(GLPK::glpk UNKNOWN IMPORTED)
  set_target_properties(GLPK::glpk PROPERTIES IMPORTED_LOCATION "${GLPK_LIBRARY}"
    INTERFACE_INCLUDE_DIRECTORIES "${GLPK_INCLUDE_DIR}")
endif()
mark_as_advanced(GLPK_INCLUDE_DIR GLPK_LIBRARY)
