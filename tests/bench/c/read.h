/* Numbers from a text file. Whatever cannot be read ends the program with a message. */
#ifndef TICKOVER_BENCH_READ_H
#define TICKOVER_BENCH_READ_H

#include <stddef.h>
#include <stdio.h>

void *allocate(size_t bytes);
double read_number(FILE *file);
int read_count(FILE *file);
double *read_numbers(FILE *file, int count);
/* Reads a word that has to be the one expected. */
void read_word(FILE *file, const char *expected);

#endif
