/*
 * A quantity that goes with the crank angle over one turn, smooth between breakpoints. Each segment is halved, and each
 * half has nodes spaced as squares, close together at the breakpoint, where an opening may begin as distance^1.5;
 * between nodes cubic Hermite pieces in the root.
 */
#ifndef TICKOVER_BENCH_ANGLE_TABLE_H
#define TICKOVER_BENCH_ANGLE_TABLE_H

#include <stdio.h>

#define FULL_TURN 6.283185307179586476925286766559

typedef struct {
  int cells;    /* per half segment; 0 when the quantity is constant */
  int segments;
  double constant;
  double *starts;        /* of each segment, and the end of the last: 0 to a full turn */
  double *middles;
  double *inverse_halves; /* 1/half length */
  double *nodes;         /* value and slope by turns; two halves a segment, cells + 1 nodes a half */
  unsigned char *flat;   /* by segment: the same value everywhere */
  unsigned char first[256]; /* segment in which each 1/256 of the turn begins */
} AngleTable;

AngleTable angle_table_read(FILE *file);
void angle_table_free(AngleTable *table);

/* At an angle in [0, FULL_TURN). */
double angle_table_value(const AngleTable *table, double angle);

#endif
