/*
 * How fast does a ride go in plain C? The loop of src/simulate/loop.ts with the classical Runge-Kutta method once a tick,
 * from the numbers that the bench has written.
 *
 *     cc -O2 -ffp-contract=off -o balance balance.c -lm && ./balance NUMBERS.txt
 *
 * Rides again and again for half a second of computing and prints in one line: ticks, seconds of computing for a ride,
 * how it ended (0 upright, 1 nose strike, 2 tail strike, 3 rider off) and the state at its end. A copy of the moment is
 * kept for every tick, as our tape keeps a row.
 */
#include <time.h>

#include "numbers.h"

#include "motion.h"

#include "tick.h"

static void advance(struct moment *now, const double decay[3]) {
  double stage[STATES], k1[RATES], k2[RATES], k3[RATES], k4[RATES], *s = now->state;
  double gap = now->current - now->followed;
  now->torque = motor_constant * (now->followed + gap * decay[0]);
  derive(now, s, k1);
  for (int i = 0; i < STATES; i++) stage[i] = s[i] + 0.5 * dt * k1[i];
  now->torque = motor_constant * (now->followed + gap * decay[1]);
  derive(now, stage, k2);
  for (int i = 0; i < STATES; i++) stage[i] = s[i] + 0.5 * dt * k2[i];
  derive(now, stage, k3);
  for (int i = 0; i < STATES; i++) stage[i] = s[i] + dt * k3[i];
  now->torque = motor_constant * (now->followed + gap * decay[2]);
  derive(now, stage, k4);
  for (int i = 0; i < STATES; i++) s[i] += (dt / 6) * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]);
}

static int is_below_road(double x, double z) {
  double place = least(most((x - origin) / spacing, 0), knots - 1);
  int left = (int)least(floor(place), knots - 2);
  return z < bare[left] + (place - left) * (bare[left + 1] - bare[left]);
}

static int ending(const double *s) {
  double ct = cos(s[PITCH]), st = sin(s[PITCH]), x = s[X] - below * st, z = s[Z] - below * ct;
  if (is_below_road(x + reach * ct, z - reach * st)) return 1;
  if (is_below_road(x - reach * ct, z + reach * st)) return 2;
  double longest = L + (m * G) / kl + 0.05;
  return fabs(s[LEAN]) > lean_limit || s[LEG] > longest || s[LEG] < 0.6 * L ? 3 : 0;
}

static struct moment begin(void) {
  struct moment now = {0};
  memcpy(now.state, list("start.state", NULL), sizeof now.state);
  const double *inputs = list("start.inputs", NULL), *motion = list("start.motion", NULL);
  const double *law = list("start.controller", NULL), *rider = list("start.rider", NULL);
  now.torque = inputs[0], now.rider_torque = inputs[1], now.shove = inputs[2], now.grip = inputs[3];
  now.rolling = inputs[4], now.current = motion[0], now.motor_speed = motion[1];
  now.charge = list("start.pack", NULL)[0];
  now.pitch = list("start.estimator", NULL)[0];
  now.integral = law[0], now.lift = law[1], now.load = law[2], now.request = law[4], now.headroom = law[6];
  now.smooth = rider[0], now.smooth_rate = rider[1], now.lean_trim = rider[2], now.last_speed = rider[5];
  memcpy(requests, list("start.requests", NULL), sizeof(double) * (delay + 1));
  const int slots = rider_slots();
  memcpy(past_lean, list("start.pastLean", NULL), sizeof(double) * slots);
  memcpy(past_lean_rate, list("start.pastLeanRate", NULL), sizeof(double) * slots);
  memcpy(past_speed, list("start.pastSpeed", NULL), sizeof(double) * slots);
  return now;
}

static void decide(struct moment *now, int tick, struct moment *tape) {
  sense(now);
  pack(now);
  ceilings(now);
  control(now, tick);
  requests[tick % (delay + 1)] = now->request;
  now->followed = requests[(tick + 1) % (delay + 1)];
  feel(now, tick);
  tape[tick] = *now;
}

/* Rides to the end; the ticks that it took. */
static int ride(struct moment *now, struct moment *tape, int *end) {
  /* Share of the current's gap that is left at the start, the middle and the end of a tick. */
  const double decay[3] = {lag > 0, lag > 0 ? exp(-dt / 2 / lag) : 0, lag_keep};
  *end = 0;
  for (int tick = 0; tick < ticks;) {
    decide(now, tick, tape);
    advance(now, decay);
    now->charge = least(1, most(0, now->charge - (now->pack_current * dt) / capacity));
    now->current = now->followed + lag_keep * (now->current - now->followed);
    now->torque = motor_constant * now->current;
    tick++;
    if ((*end = ending(now->state))) return tick;
  }
  decide(now, ticks, tape);
  return ticks;
}

int main(int count, char **words) {
  if (count != 2) return 1;
  read_lines(words[1]);
  read_constants();
  struct moment *tape = calloc(ticks + 1, sizeof *tape), now;
  int rides = -1, end, ridden; /* the first ride, in cold memory, does not count */
  clock_t since = 0;
  do {
    now = begin();
    ridden = ride(&now, tape, &end);
    if (++rides == 0) since = clock();
  } while (rides == 0 || clock() - since < CLOCKS_PER_SEC / 2);
  printf("%d %.17g %d", ridden, (double)(clock() - since) / CLOCKS_PER_SEC / rides, end);
  for (int i = 0; i < STATES; i++) printf(" %.17g", now.state[i]);
  printf("\n");
  return 0;
}
