// SPDX-License-Identifier: MIT
// layshaft._arrays: formulas as real NumPy ufuncs, made of the list in array_formulas.hpp. Plain C of Python and NumPy:
// there is no class in it, and pybind11 would be a third of the module.
#define PY_SSIZE_T_CLEAN
#include <Python.h>

#include "array_names.hpp"

#define NPY_NO_DEPRECATED_API NPY_2_0_API_VERSION
#include <numpy/arrayobject.h>
#include <numpy/ufuncobject.h>

#include <cfenv>  // to clear what NumPy would warn of
#include <deque>
#include <memory>

namespace layshaft::python::arrays {
namespace {

// --- Python's objects ------------------------------------------------------------------------------------------------

/// Thrown where a Python error is set.
struct Raised {};

struct LetGo {
  void operator()(PyObject* object) const { Py_DECREF(object); }
};
using Owned = std::unique_ptr<PyObject, LetGo>;

/// What Python has just made, or its error.
Owned own(PyObject* made) {
  if (!made) throw Raised();
  return Owned(made);
}
void check(int failed) {
  if (failed < 0) throw Raised();
}

/// What `work` makes, for Python: null where it throws, with the error set.
template <class Work>
PyObject* result_of(Work work) noexcept {
  try {
    return Owned(work()).release();
  } catch (const Raised&) {
  } catch (const std::exception& error) {
    PyErr_SetString(PyExc_RuntimeError, error.what());
  }
  return nullptr;
}

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
PyObject* before = nullptr;
PyObject* after = nullptr;

bool is_plain(PyObject* object) {
  return PyFloat_CheckExact(object) || PyLong_CheckExact(object) || PyArray_CheckExact(object) ||
         PyObject_TypeCheck(object, &PyGenericArrType_Type) || PyList_CheckExact(object) || object == Py_None ||
         PyTuple_CheckExact(object) || PyBool_Check(object) || PyUnicode_CheckExact(object);
}

/// A call's positional arguments as a tuple, and those by name as a dict.
struct Given {
  Owned positional, named;

  Given(PyObject* const* arguments, Py_ssize_t count, PyObject* names)
      : positional(own(PyTuple_New(count))), named(own(PyDict_New())) {
    for (Py_ssize_t i = 0; i < count; ++i) PyTuple_SET_ITEM(positional.get(), i, Py_NewRef(arguments[i]));
    for (Py_ssize_t i = 0; names && i < PyTuple_GET_SIZE(names); ++i)
      check(PyDict_SetItem(named.get(), PyTuple_GET_ITEM(names, i), arguments[count + i]));
  }
};

/// Takes the error that is set.
Owned take_error() {
#if PY_VERSION_HEX >= 0x030C0000
  return Owned(PyErr_GetRaisedException());
#else
  PyObject *type, *error, *trace;
  PyErr_Fetch(&type, &error, &trace);
  PyErr_NormalizeException(&type, &error, &trace);
  if (trace) PyException_SetTraceback(error, trace);
  Py_XDECREF(trace);
  Py_DECREF(type);
  return Owned(error);
#endif
}

PyObject* call(PyObject* ufunc, PyObject* const* arguments, std::size_t flags, PyObject* names) {
  const Py_ssize_t count = PyVectorcall_NARGS(flags);
  const Py_ssize_t all = count + (names ? PyTuple_GET_SIZE(names) : 0);
  bool plain = true;
  for (Py_ssize_t i = 0; i < all && plain; ++i) plain = is_plain(arguments[i]);
  return result_of([&] {
    if (!plain && before) {
      const Given given(arguments, count, names);
      Owned answer =
          own(PyObject_CallFunctionObjArgs(before, ufunc, given.positional.get(), given.named.get(), nullptr));
      if (answer.get() != Py_NotImplemented) return answer;
    }
    Owned result(numpy_call(ufunc, arguments, flags, names));
    if (result || !after || !PyErr_ExceptionMatches(PyExc_TypeError)) return result;
    const Owned error = take_error();
    const Given given(arguments, count, names);
    own(PyObject_CallFunctionObjArgs(after, ufunc, given.positional.get(), given.named.get(), error.get(), nullptr));
    PyErr_SetObject(reinterpret_cast<PyObject*>(Py_TYPE(error.get())), error.get());
    return result;
  });
}

// --- Making them -----------------------------------------------------------------------------------------------------

/// NumPy keeps the pointers, so what they point to is never let go.
struct Kept {
  std::string name, doc;
  void* data;
  char types[Words::most + 1];
};

void add_ufunc(PyObject* module, const ArrayFormula& formula) {
  static PyUFuncGenericFunction loops[] = {loop};
  static auto& all_kept = *new std::deque<Kept>;
  Kept& kept = all_kept.emplace_back();
  kept.name = role(formula, formula.inputs).name;
  kept.doc = docstring(formula);
  kept.data = const_cast<ArrayFormula*>(&formula);
  for (char& type : kept.types) type = NPY_DOUBLE;
  const Owned made = own(PyUFunc_FromFuncAndData(loops, &kept.data, kept.types, 1, formula.inputs, 1, PyUFunc_None,
                                                 kept.name.c_str(), kept.doc.c_str(), 0));
  auto& entry = reinterpret_cast<PyUFuncObject*>(made.get())->vectorcall;
  numpy_call = entry;
  entry = call;
  // Where pickle is to look for it. A NumPy that does not take that makes pickle search, which finds it as well.
  const Owned home = own(PyUnicode_FromString("layshaft.arrays"));
  if (PyObject_SetAttrString(made.get(), "__module__", home.get()) < 0) PyErr_Clear();
  check(PyModule_AddObjectRef(module, kept.name.c_str(), made.get()));
}

Owned text(std::string_view utf8) {
  return own(PyUnicode_FromStringAndSize(utf8.data(), static_cast<Py_ssize_t>(utf8.size())));
}
Owned described(const Role& role) {
  return own(PyTuple_Pack(4, text(role.name).get(), text(role.word).get(), text(role.kind->name).get(),
                          text(role.unit).get()));
}

/// The list, for stubs and tests: (name, formula's name, (argument, ...), result), where an argument is (name, word,
/// kind, unit) and so is the result.
PyObject* list_of_formulas(PyObject*, PyObject*) {
  return result_of([] {
    Owned list = own(PyList_New(0));
    for (const ArrayFormula& formula : array_formulas()) {
      const Owned arguments = own(PyTuple_New(formula.inputs));
      for (std::size_t i = 0; i < formula.inputs; ++i)
        PyTuple_SET_ITEM(arguments.get(), static_cast<Py_ssize_t>(i), described(role(formula, i)).release());
      const Role result = role(formula, formula.inputs);
      const Owned row = own(PyTuple_Pack(4, text(result.name).get(), text(formula.about.name).get(), arguments.get(),
                                         described(result).get()));
      check(PyList_Append(list.get(), row.get()));
    }
    return list;
  });
}
PyObject* list_left_out(PyObject*, PyObject*) {
  return result_of([] {
    Owned list = own(PyList_New(0));
    for (const std::string_view name : left_out()) check(PyList_Append(list.get(), text(name).get()));
    return list;
  });
}
PyObject* mind(PyObject*, PyObject* arguments) {
  if (!PyArg_ParseTuple(arguments, "OO", &before, &after)) return nullptr;
  Py_INCREF(before);
  Py_INCREF(after);
  Py_RETURN_NONE;
}

int fill(PyObject* module) {
  const Owned done(result_of([&] {
    check(_import_array());
    check(_import_umath());
    for (const ArrayFormula& formula : array_formulas()) add_ufunc(module, formula);
    return Owned(Py_NewRef(Py_None));
  }));
  return done ? 0 : -1;
}

PyMethodDef functions[] = {
    {"_formulas", list_of_formulas, METH_NOARGS, "_formulas()\n--\n\nThe list that the functions are made of."},
    {"_left_out", list_left_out, METH_NOARGS,
     "_left_out()\n--\n\nThe formulas that are no functions here, since they take anything but numbers."},
    {"_mind", mind, METH_VARARGS,
     "_mind(looks_before, looks_after, /)\n--\n\nSets who looks at a call first, and at a TypeError after."},
    {}};
PyModuleDef_Slot slots[] = {{Py_mod_exec, reinterpret_cast<void*>(fill)},
#ifdef Py_mod_multiple_interpreters
                            {Py_mod_multiple_interpreters, Py_MOD_MULTIPLE_INTERPRETERS_NOT_SUPPORTED},
#endif
#ifdef Py_mod_gil
                            {Py_mod_gil, Py_MOD_GIL_NOT_USED},
#endif
                            {}};
PyModuleDef definition{PyModuleDef_HEAD_INIT,
                       "_arrays",
                       "layshaft's formulas as NumPy ufuncs; import layshaft.arrays instead.",
                       0,
                       functions,
                       slots,
                       nullptr,
                       nullptr,
                       nullptr};

}  // namespace
}  // namespace layshaft::python::arrays

PyMODINIT_FUNC PyInit__arrays() { return PyModuleDef_Init(&layshaft::python::arrays::definition); }
