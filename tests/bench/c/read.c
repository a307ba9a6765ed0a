#include "read.h"

#include <stdlib.h>
#include <string.h>

void *allocate(size_t bytes) {
  void *memory = calloc(bytes > 0 ? bytes : 1, 1);
  if (memory == NULL) {
    fputs("out of memory\n", stderr);
    exit(1);
  }
  return memory;
}

double read_number(FILE *file) {
  char word[64];
  char *end;
  if (fscanf(file, "%63s", word) != 1) {
    fputs("the file ends where a number should stand\n", stderr);
    exit(1);
  }
  const double value = strtod(word, &end);
  if (*end != '\0') {
    fprintf(stderr, "expected a number, found \"%s\"\n", word);
    exit(1);
  }
  return value;
}

int read_count(FILE *file) { return (int)read_number(file); }

double *read_numbers(FILE *file, int count) {
  double *numbers = allocate((size_t)count * sizeof(double));
  for (int i = 0; i < count; i += 1) numbers[i] = read_number(file);
  return numbers;
}

void read_word(FILE *file, const char *expected) {
  char word[64];
  if (fscanf(file, "%63s", word) != 1 || strcmp(word, expected) != 0) {
    fprintf(stderr, "expected \"%s\" in the engine file\n", expected);
    exit(1);
  }
}
