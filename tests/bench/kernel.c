/* API MPMS 11.1-2004, 11.1.6.1: base density at 60 degF, temperature and pressure -> CTL, CPL, CTPL.
 * The comparison for `npm run bench`. Reads points (density, temperature, pressure, as doubles) from a file; for every line on
 * standard input runs all of them `repeat` times and prints nanoseconds of processor time and the sum of all results. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct { double from, K0, K1, K2; } Zone;

static const Zone CRUDE[] = {{610.6, 341.0957, 0, 0}};
static const Zone REFINED[] = {{838.3127, 103.8720, 0.2701, 0}, {787.5195, 330.3010, 0, 0}, {770.3520, 1489.0670, 0, -0.00186840}, {610.6, 192.4571, 0.2438, 0}};
static const Zone LUBE[] = {{800.9, 0, 0.34878, 0}};

static const double DELTA60 = 0.01374979547, BASE60 = 60.0068749;

static double on_ipts68(double t) {
  const double t90 = (t - 32) / 1.8, tau = t90 / 630;
  const double dt = (-0.148759 + (-0.267408 + (1.08076 + (1.269056 + (-4.089591 + (-1.871251 + (7.438081 + -3.536296 * tau) * tau) * tau) * tau) * tau) * tau) * tau) * tau;
  return 1.8 * (t90 - dt) + 32;
}

static void factors(const Zone *zones, int count, double rho60, double t, double P, double *out) {
  int i = 0;
  while (i < count - 1 && rho60 < zones[i].from) i++;
  const double K0 = zones[i].K0, K1 = zones[i].K1, K2 = zones[i].K2;
  const double A = (DELTA60 / 2) * ((K0 / rho60 + K1) / rho60 + K2);
  const double B = (2 * K0 + K1 * rho60) / (K0 + (K1 + K2 * rho60) * rho60);
  const double rho = rho60 * (1 + (exp(A * (1 + 0.8 * A)) - 1) / (1 + A * (1 + 1.6 * A) * B));
  const double alpha = (K0 / rho + K1) / rho + K2;
  const double ts = on_ipts68(t), dt = ts - BASE60;
  const double ctl = exp(-alpha * dt * (1 + 0.8 * alpha * (dt + DELTA60)));
  const double Fp = exp(-1.9947 + 0.00013427 * ts + (793920 + 2326 * ts) / (rho * rho));
  const double cpl = 1 / (1 - 1e-5 * Fp * (P < 0 ? 0 : P));
  out[0] = ctl;
  out[1] = cpl;
  out[2] = ctl * cpl;
}

int main(int argc, char **argv) {
  if (argc != 5) return 2;
  const char *group = argv[1];
  const long count = atol(argv[3]), repeat = atol(argv[4]);
  const Zone *zones = strcmp(group, "crude") == 0 ? CRUDE : strcmp(group, "lube") == 0 ? LUBE : REFINED;
  const int zone_count = strcmp(group, "refined") == 0 ? 4 : 1;
  double *points = malloc(sizeof(double) * 3 * count), *out = malloc(sizeof(double) * 3 * count);
  FILE *file = fopen(argv[2], "rb");
  if (!points || !out || !file || fread(points, sizeof(double), 3 * count, file) != (size_t)(3 * count)) return 3;
  fclose(file);
  char line[16];
  while (fgets(line, sizeof line, stdin)) {
    struct timespec begin, end;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &begin);
    for (long r = 0; r < repeat; r++)
      for (long i = 0; i < count; i++) factors(zones, zone_count, points[3 * i], points[3 * i + 1], points[3 * i + 2], out + 3 * i);
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &end);
    double sum = 0;
    for (long i = 0; i < 3 * count; i++) sum += out[i];
    printf("%.0f %.17g\n", (end.tv_sec - begin.tv_sec) * 1e9 + (end.tv_nsec - begin.tv_nsec), sum);
    fflush(stdout);
  }
  return 0;
}
