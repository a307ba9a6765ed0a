#include "angle-table.h"

#include <math.h>
#include <stdlib.h>

#include "read.h"

#define BUCKETS 256

static int is_flat(const double *nodes, int count) {
  for (int i = 0; i < count; i += 1)
    if (nodes[2 * i] != nodes[0]) return 0;
  return 1;
}

AngleTable angle_table_read(FILE *file) {
  AngleTable table = {0};
  table.cells = read_count(file);
  if (table.cells == 0) {
    table.constant = read_number(file);
    return table;
  }
  const int segments = table.segments = read_count(file);
  const int per_segment = 2 * (table.cells + 1);
  table.starts = read_numbers(file, segments + 1);
  table.middles = allocate(segments * sizeof(double));
  table.inverse_halves = allocate(segments * sizeof(double));
  table.nodes = read_numbers(file, 2 * per_segment * segments);
  table.flat = allocate(segments);
  for (int s = 0; s < segments; s += 1) {
    table.middles[s] = 0.5 * (table.starts[s] + table.starts[s + 1]);
    table.inverse_halves[s] = 2.0 / (table.starts[s + 1] - table.starts[s]);
    table.flat[s] = (unsigned char)is_flat(table.nodes + 2 * per_segment * s, per_segment);
  }
  int segment = 0;
  for (int i = 0; i < BUCKETS; i += 1) {
    while (segment + 1 < segments && table.starts[segment + 1] <= i * (FULL_TURN / BUCKETS)) segment += 1;
    table.first[i] = (unsigned char)segment;
  }
  return table;
}

void angle_table_free(AngleTable *table) {
  free(table->starts);
  free(table->middles);
  free(table->inverse_halves);
  free(table->nodes);
  free(table->flat);
}

double angle_table_value(const AngleTable *table, double angle) {
  if (table->cells == 0) return table->constant;
  int s = table->first[(int)(angle * (BUCKETS / FULL_TURN)) & (BUCKETS - 1)];
  while (s + 1 < table->segments && angle >= table->starts[s + 1]) s += 1;
  const int cells = table->cells;
  const double *nodes = table->nodes + 4 * (cells + 1) * s;
  if (table->flat[s]) return nodes[0];
  double from_edge = angle - table->starts[s];
  if (angle > table->middles[s]) {
    from_edge = table->starts[s + 1] - angle;
    nodes += 2 * (cells + 1);
  }
  const double u = cells * sqrt(from_edge * table->inverse_halves[s]);
  int i = (int)u;
  if (i >= cells) i = cells - 1;
  const double w = u - i;
  const double v = 1.0 - w;
  nodes += 2 * i;
  const double rise = nodes[2] - nodes[0];
  return v * nodes[0] + w * nodes[2] + w * v * (v * (nodes[1] - rise) - w * (nodes[3] - rise));
}
