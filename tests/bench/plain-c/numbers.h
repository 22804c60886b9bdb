/*
 * What is a ride made of? Reads the text file of numbers: each line is a name, a count and so many values. Names and
 * units are those of src/model/plant.ts, src/control and src/scenario.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PAST = 512 }; /* the most that a ring remembers, ticks */

static struct { char name[64]; int count; double *values; } lines[256];
static int line_count;

static void read_lines(const char *path) {
  FILE *file = fopen(path, "r");
  if (!file) { perror(path); exit(1); }
  for (; fscanf(file, "%63s %d", lines[line_count].name, &lines[line_count].count) == 2; line_count++) {
    double *values = lines[line_count].values = malloc(sizeof(double) * lines[line_count].count);
    for (int i = 0; i < lines[line_count].count; i++)
      if (fscanf(file, "%lf", &values[i]) != 1) exit(1);
    if (line_count == 255) exit(1);
  }
  fclose(file);
}

static const double *list(const char *name, int *count) {
  for (int i = 0; i < line_count; i++)
    if (strcmp(lines[i].name, name) == 0) {
      if (count) *count = lines[i].count;
      return lines[i].values;
    }
  fprintf(stderr, "no number named %s\n", name);
  exit(1);
}

static double number(const char *name) { return *list(name, NULL); }

/* The rig. */
static double r, Iw, kt, ct_, kx, cx, mw, md, Id, a, b, hf, reach, below, m, Ir, L, air, kl, cl, half, kp, cp_, lean_limit;
static double motor_constant, motor_ohm, lag, cells, pack_ohm, capacity, most_out, most_in, modulation;
static const double *cell_volts;
/* Road, script. */
static double origin, spacing, dt;
static int knots, pieces, ticks;
static const double *road, *bare, *piece_start, *grip, *rolling, *wanted_speed, *nose_down, *shoves;
/* Law of the profile. */
static double gyro_trust, rate_follow, drive_a, brake_a, P, D, I, I_limit, progressive, slew, trim, load_follow;
static double load_share, load_set_point, lift_below, lift_most, lift_step, ramp_s, lag_keep;
static int delay, takes_over;
/* Rider's feedback. */
static double rider_delay, stiffness, damping, thrust, lean_gain, drive_wish, brake_wish, speed_time, trim_rate;
static double smoothing, smoothing_keep;

/* Length of the rings through which the rider senses. */
static int rider_slots(void) { return (int)ceil(rider_delay) + 2; }

static void read_constants(void) {
  const struct { double *where; const char *name; } wanted[] = {
    {&r, "plant.wheelRadiusM"}, {&Iw, "plant.wheelInertiaKgM2"}, {&kt, "plant.verticalStiffnessNPerM"},
    {&ct_, "plant.verticalDampingNSPerM"}, {&kx, "plant.treadStiffnessNPerM"}, {&cx, "plant.treadDampingNSPerM"},
    {&mw, "plant.wheelMassKg"}, {&md, "plant.deckMassKg"}, {&Id, "plant.deckInertiaKgM2"},
    {&a, "plant.deckForwardM"}, {&b, "plant.deckAboveAxleM"}, {&hf, "plant.ankleAboveAxleM"},
    {&reach, "plant.reachM"}, {&below, "plant.tipBelowAxleM"}, {&m, "plant.riderMassKg"},
    {&Ir, "plant.riderInertiaKgM2"}, {&L, "plant.legLengthM"}, {&air, "plant.halfDragAreaKgPerM"},
    {&kl, "plant.legStiffnessNPerM"}, {&cl, "plant.legDampingNSPerM"}, {&half, "plant.halfStanceM"},
    {&kp, "plant.passiveStiffnessNmPerRad"}, {&cp_, "plant.passiveDampingNmSPerRad"},
    {&lean_limit, "plant.leanLimitRad"}, {&motor_constant, "plant.motor.torqueConstantNmPerA"},
    {&motor_ohm, "plant.motor.resistanceOhm"}, {&lag, "plant.motor.lagS"}, {&cells, "plant.pack.seriesCells"},
    {&pack_ohm, "plant.pack.resistanceOhm"}, {&capacity, "plant.pack.capacityC"},
    {&most_out, "plant.pack.dischargeCurrentA"}, {&most_in, "plant.pack.chargeCurrentA"},
    {&modulation, "plant.pack.modulationRatio"}, {&origin, "road.originM"}, {&spacing, "road.spacingM"},
    {&dt, "law.tickS"}, {&gyro_trust, "law.estimator.gyroTrustRatio"},
    {&rate_follow, "law.estimator.rateFollowRatio"}, {&drive_a, "law.ceilings.driveCurrentA"},
    {&brake_a, "law.ceilings.brakeCurrentA"}, {&P, "law.proportionalAPerDeg"}, {&D, "law.rateAPerDegPerS"},
    {&I, "law.integralAPerDegS"}, {&I_limit, "law.integralLimitA"}, {&progressive, "law.progressivePerDeg"},
    {&slew, "law.slewStepA"}, {&trim, "law.restTrimRad"}, {&ramp_s, "law.engageRampS"},
    {&load_follow, "law.loadFollowRatio"}, {&load_share, "law.loadCurrentShare"},
    {&load_set_point, "law.loadSetPointRadPerA"}, {&lift_below, "law.liftBelowShare"},
    {&lift_most, "law.liftMostRad"}, {&lift_step, "law.liftStepRad"}, {&rider_delay, "rider.delayTicks"},
    {&stiffness, "rider.stiffnessNmPerRad"}, {&damping, "rider.dampingNmSPerRad"},
    {&thrust, "rider.thrustNmPerMPerS2"}, {&lean_gain, "rider.leanGainRatio"}, {&drive_wish, "rider.driveMPerS2"},
    {&brake_wish, "rider.brakeMPerS2"}, {&speed_time, "rider.speedTimeS"}, {&trim_rate, "rider.trimRatePerM"},
    {&smoothing, "rider.smoothingRadPerS"}, {&smoothing_keep, "rider.smoothingKeepRatio"},
  };
  for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) *wanted[i].where = number(wanted[i].name);
  cell_volts = list("plant.pack.cellOpenCircuitV", NULL);
  road = list("road.knots", &knots);
  knots /= 2;
  bare = list("road.bareHeightM", NULL);
  piece_start = list("road.pieceStartM", &pieces);
  grip = list("road.gripRatio", NULL);
  rolling = list("road.rollingResistanceRatio", NULL);
  wanted_speed = list("script.wantedSpeedMPerS", NULL);
  nose_down = list("script.noseDownTorqueNm", NULL);
  shoves = list("script.shoveN", NULL);
  ticks = (int)number("script.tickCount");
  delay = (int)number("law.delayTicks");
  takes_over = (int)number("takesOver");
  lag_keep = lag > 0 ? exp(-dt / lag) : 0;
  if (delay + 1 > PAST || rider_slots() > PAST) exit(1);
}
