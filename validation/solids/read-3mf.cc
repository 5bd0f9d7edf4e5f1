// Reads a 3MF file in the strict mode of lib3mf 1.8 (Debian: lib3mf-dev) and says what stands in it, one object a line.
// g++ -I/usr/include/lib3mf read-3mf.cc -l3MF -o read-3mf
#include <cstdio>
#include <Model/COM/NMR_DLLInterfaces.h>

using namespace NMR;

#define TRY(call, what) \
  if ((call) != LIB3MF_OK) { std::printf("refused: %s\n", what); return 1; }

int main(int count, char **words) {
  if (count < 2) return 2;
  PLib3MFModel *model = nullptr;
  PLib3MFModelReader *reader = nullptr;
  TRY(lib3mf_createmodel(&model), "no model");
  TRY(lib3mf_model_queryreader(model, "3mf", &reader), "no reader");
  TRY(lib3mf_reader_setstrictmodeactive(reader, true), "no strict mode");
  if (lib3mf_reader_readfromfileutf8(reader, words[1]) != LIB3MF_OK) {
    DWORD code = 0;
    LPCSTR said = nullptr;
    lib3mf_getlasterror(reader, &code, &said);
    std::printf("refused: %u %s\n", code, said ? said : "");
    return 1;
  }
  DWORD warnings = 0;
  TRY(lib3mf_reader_getwarningcount(reader, &warnings), "warnings");
  std::printf("warnings %u\n", warnings);
  PLib3MFModelResourceIterator *each = nullptr;
  TRY(lib3mf_model_getmeshobjects(model, &each), "objects");
  for (BOOL more = false; lib3mf_resourceiterator_movenext(each, &more) == LIB3MF_OK && more;) {
    PLib3MFModelResource *object = nullptr;
    TRY(lib3mf_resourceiterator_getcurrent(each, &object), "object");
    DWORD points = 0, triangles = 0;
    BOOL closed = false;
    TRY(lib3mf_meshobject_getvertexcount(object, &points), "vertices");
    TRY(lib3mf_meshobject_gettrianglecount(object, &triangles), "triangles");
    TRY(lib3mf_meshobject_ismanifoldandoriented(object, &closed), "manifold");
    std::printf("object points %u triangles %u closed %d\n", points, triangles, closed ? 1 : 0);
  }
  return 0;
}
