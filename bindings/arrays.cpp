// SPDX-License-Identifier: MIT
// layshaft._arrays: formulas as real NumPy ufuncs, made of the list in array_formulas.hpp.
#include "array_names.hpp"

#include <pybind11/pybind11.h>

#define NPY_NO_DEPRECATED_API NPY_2_0_API_VERSION
#include <numpy/arrayobject.h>
#include <numpy/ufuncobject.h>

#include <cfenv>  // to clear what NumPy would warn of
#include <deque>

namespace layshaft::python::arrays {
namespace {

namespace py = pybind11;

// --- The loop that NumPy calls ---------------------------------------------------------------------------------------

/// An argument's elements in a row. Where they do not lie so, they are gathered block by block; a single one that
/// stands for all is gathered once.
class Gathered {
 public:
  static constexpr npy_intp block = 256;

  void start(const char* array, npy_intp step, npy_intp count) {
    array_ = array;
    step_ = step;
    if (step == 0) gather(0, std::min(count, block));
  }
  const double* at(npy_intp begin, npy_intp count) {
    if (step_ == sizeof(double)) return reinterpret_cast<const double*>(array_) + begin;
    if (step_ != 0) gather(begin, count);
    return elements_;
  }

 private:
  void gather(npy_intp begin, npy_intp count) {
    for (npy_intp i = 0; i < count; ++i) elements_[i] = *reinterpret_cast<const double*>(array_ + (begin + i) * step_);
  }
  const char* array_;
  npy_intp step_;
  double elements_[block];
};

#if defined(__GNUC__) && defined(__x86_64__)
const bool has_avx2 = __builtin_cpu_supports("avx2");
#else
constexpr bool has_avx2 = false;
#endif

void loop(char** arrays, const npy_intp* dimensions, const npy_intp* steps, void* data) {
  const auto& formula = *static_cast<const ArrayFormula*>(data);
  const Loop work_out = has_avx2 ? formula.wide : formula.loop;
  const std::size_t inputs = formula.inputs;
  const npy_intp count = dimensions[0];
  const auto in_a_row = [&](std::size_t i) { return steps[i] == sizeof(double); };
  bool all_in_a_row = true;
  for (std::size_t i = 0; i <= inputs; ++i) all_in_a_row = all_in_a_row && in_a_row(i);

  if (count == 1 || all_in_a_row) {
    const double* in[Words::most];
    for (std::size_t i = 0; i < inputs; ++i) in[i] = reinterpret_cast<const double*>(arrays[i]);
    work_out(in, reinterpret_cast<double*>(arrays[inputs]), count);
  } else {
    Gathered gathered[Words::most];
    double results[Gathered::block];
    for (std::size_t i = 0; i < inputs; ++i) gathered[i].start(arrays[i], steps[i], count);
    for (npy_intp begin = 0; begin < count; begin += Gathered::block) {
      const npy_intp some = std::min(count - begin, Gathered::block);
      const double* in[Words::most];
      for (std::size_t i = 0; i < inputs; ++i) in[i] = gathered[i].at(begin, some);
      char* const out = arrays[inputs] + begin * steps[inputs];
      if (in_a_row(inputs)) {
        work_out(in, reinterpret_cast<double*>(out), some);
      } else {
        work_out(in, results, some);
        for (npy_intp i = 0; i < some; ++i) *reinterpret_cast<double*>(out + i * steps[inputs]) = results[i];
      }
    }
  }
  std::feclearexcept(FE_ALL_EXCEPT);  // NaN out is the answer, not a warning
}

// --- The call, and who looks at it first -----------------------------------------------------------------------------

// NumPy hands an argument that knows ufuncs to its own class at once, which may strip its units, or refuse it without a
// word of what was expected. So each ufunc's entry for calls is ours: what is no plain number or array is shown to
// `before`, which answers for it or returns NotImplemented, and a TypeError to `after`, which may find better words.
// Both are Python functions, set once by layshaft.arrays.
vectorcallfunc numpy_call = nullptr;
py::handle before;
py::handle after;

bool is_plain(PyObject* object) {
  return PyFloat_CheckExact(object) || PyLong_CheckExact(object) || PyArray_CheckExact(object) ||
         PyObject_TypeCheck(object, &PyGenericArrType_Type) || PyList_CheckExact(object) || object == Py_None ||
         PyTuple_CheckExact(object) || PyBool_Check(object) || PyUnicode_CheckExact(object);
}

/// The call's positional arguments as a tuple, and those by name as a dict.
py::tuple to_tuple(PyObject* const* arguments, Py_ssize_t count) {
  py::tuple all(static_cast<std::size_t>(count));
  for (Py_ssize_t i = 0; i < count; ++i) all[static_cast<std::size_t>(i)] = py::handle(arguments[i]);
  return all;
}
py::dict to_dict(PyObject* const* values, PyObject* names) {
  py::dict all;
  for (Py_ssize_t i = 0; names && i < PyTuple_GET_SIZE(names); ++i)
    all[py::handle(PyTuple_GET_ITEM(names, i))] = py::handle(values[i]);
  return all;
}

PyObject* call(PyObject* ufunc, PyObject* const* arguments, std::size_t flags, PyObject* names) {
  const Py_ssize_t count = PyVectorcall_NARGS(flags);
  const Py_ssize_t all = count + (names ? PyTuple_GET_SIZE(names) : 0);
  bool plain = true;
  for (Py_ssize_t i = 0; i < all && plain; ++i) plain = is_plain(arguments[i]);
  try {
    if (!plain && before) {
      const py::object answer =
          before(py::handle(ufunc), to_tuple(arguments, count), to_dict(arguments + count, names));
      if (answer.ptr() != Py_NotImplemented) return answer.inc_ref().ptr();
    }
    PyObject* result = numpy_call(ufunc, arguments, flags, names);
    if (result || !after || !PyErr_ExceptionMatches(PyExc_TypeError)) return result;
    py::error_already_set error;
    after(py::handle(ufunc), to_tuple(arguments, count), to_dict(arguments + count, names), error.value());
    error.restore();
  } catch (py::error_already_set& error) {
    error.restore();
  } catch (const std::exception& error) {
    PyErr_SetString(PyExc_RuntimeError, error.what());
  }
  return nullptr;
}

// --- Making them -----------------------------------------------------------------------------------------------------

/// NumPy keeps the pointers, so what they point to is never let go.
struct Kept {
  std::string name, doc;
  void* data;
  char types[Words::most + 1];
};

void add_ufunc(py::module_& module, const ArrayFormula& formula) {
  static PyUFuncGenericFunction loops[] = {loop};
  static auto& all_kept = *new std::deque<Kept>;
  Kept& kept = all_kept.emplace_back();
  kept.name = role(formula, formula.inputs).name;
  kept.doc = docstring(formula);
  kept.data = const_cast<ArrayFormula*>(&formula);
  for (char& type : kept.types) type = NPY_DOUBLE;
  PyObject* made = PyUFunc_FromFuncAndData(loops, &kept.data, kept.types, 1, formula.inputs, 1, PyUFunc_None,
                                           kept.name.c_str(), kept.doc.c_str(), 0);
  if (!made) throw py::error_already_set();
  const auto ufunc = py::reinterpret_steal<py::object>(made);
  auto& entry = reinterpret_cast<PyUFuncObject*>(made)->vectorcall;
  numpy_call = entry;
  entry = call;
  // Where pickle is to look for it. A NumPy that does not take that makes pickle search, which finds it as well.
  if (PyObject_SetAttrString(made, "__module__", py::str("layshaft.arrays").ptr()) < 0) PyErr_Clear();
  module.attr(kept.name.c_str()) = ufunc;
}

py::str text(std::string_view utf8) { return py::str(utf8.data(), utf8.size()); }

py::tuple described(const Role& role) {
  return py::make_tuple(text(role.name), text(role.word), text(role.kind->name), text(role.unit));
}

/// The list, for stubs and tests: (name, formula's name, (argument, ...), result), where an argument is (name, word,
/// kind, unit) and so is the result.
py::list list_of_formulas() {
  py::list list;
  for (const ArrayFormula& formula : array_formulas()) {
    py::list arguments;
    for (std::size_t i = 0; i < formula.inputs; ++i) arguments.append(described(role(formula, i)));
    const Role result = role(formula, formula.inputs);
    list.append(py::make_tuple(text(result.name), text(formula.about->name), py::tuple(arguments), described(result)));
  }
  return list;
}

}  // namespace
}  // namespace layshaft::python::arrays

PYBIND11_MODULE(_arrays, module, pybind11::mod_gil_not_used()) {
  using namespace layshaft::python::arrays;
  module.doc() = "layshaft's formulas as NumPy ufuncs; import layshaft.arrays instead.";
  if (_import_array() < 0 || _import_umath() < 0) throw pybind11::error_already_set();
  for (const ArrayFormula& formula : array_formulas()) add_ufunc(module, formula);
  module.def("_formulas", list_of_formulas, "The list that the functions are made of.");
  module.def(
      "_left_out",
      [] {
        py::list names;
        for (const std::string_view name : left_out()) names.append(text(name));
        return names;
      },
      "The formulas that are no functions here, since they take anything but numbers.");
  module.def(
      "_mind",
      [](const py::function& looks_before, const py::function& looks_after) {
        before = py::object(looks_before).release();
        after = py::object(looks_after).release();
      },
      "Sets who looks at a call first, and at a TypeError after.");
}
