/*
 * slopes ENGINE STATES [ROUNDS]: the derivative at each state of a file, one line each; with ROUNDS, instead the time of
 * one derivative call in nanoseconds, by going over all states that many times.
 */
#define _POSIX_C_SOURCE 199309L
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "engine.h"
#include "read.h"

static double seconds(void) {
  struct timespec now;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

int main(int count, char **words) {
  if (count < 3) {
    fputs("slopes ENGINE STATES [ROUNDS]\n", stderr);
    return 1;
  }
  Engine *engine = engine_read(words[1]);
  const int n = engine_dimension(engine);
  FILE *file = fopen(words[2], "r");
  if (file == NULL) {
    fprintf(stderr, "cannot open %s\n", words[2]);
    return 1;
  }
  const int states = read_count(file);
  double *y = read_numbers(file, states * n);
  double *slopes = allocate((size_t)n * sizeof(double));
  fclose(file);
  if (count == 3) {
    for (int i = 0; i < states; i += 1) {
      engine_slopes(engine, y + i * n, slopes);
      for (int k = 0; k < n; k += 1) printf("%.17g ", slopes[k]);
      printf("\n");
    }
  } else {
    const int rounds = atoi(words[3]);
    double sum = 0.0;
    for (int i = 0; i < states; i += 1) engine_slopes(engine, y + i * n, slopes);
    const double begin = seconds();
    for (int round = 0; round < rounds; round += 1)
      for (int i = 0; i < states; i += 1) {
        engine_slopes(engine, y + i * n, slopes);
        sum += slopes[SPEED];
      }
    printf("%.6g %.6g\n", 1e9 * (seconds() - begin) / ((double)rounds * states), sum);
  }
  free(slopes);
  free(y);
  engine_free(engine);
  return 0;
}
