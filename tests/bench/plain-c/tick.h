/*
 * What happens at a tick? In the order of src/simulate/loop.ts: sensors and estimate, pack, ceilings, control, rider;
 * noise off.
 */
static const double DEG_PER_RAD = 180 / 3.14159265358979323846;

/* What is on its way: requests to the motor; lean, lean rate and speed to the rider. */
static double requests[PAST], past_lean[PAST], past_lean_rate[PAST], past_speed[PAST];

/* Gyro and accelerometer into the estimate; the tread's shear back to what grip can hold. */
static void sense(struct moment *now) {
  double *s = now->state;
  derive(now, s, now->rates);
  double held = now->grip * now->rates[LOAD] / kx;
  if (s[TREAD] < -held || s[TREAD] > held) {
    s[TREAD] = s[TREAD] > 0 ? held : -held;
    derive(now, s, now->rates);
  }
  now->motor_speed = s[WHEEL + RATE] - s[PITCH + RATE];
  double ct = cos(s[PITCH]), st = sin(s[PITCH]), forward = now->rates[X + RATE], up = now->rates[Z + RATE] + G;
  double gyro = s[PITCH + RATE], leaning = -atan2(forward * ct - up * st, forward * st + up * ct);
  now->pitch = gyro_trust * (now->pitch + gyro * dt) + (1 - gyro_trust) * leaning;
  now->rate += rate_follow * (gyro - now->rate);
}

static void pack(struct moment *now) {
  double place = least(most(now->charge, 0), 1) * 100;
  int left = (int)least(floor(place), 99);
  double open = cells * (cell_volts[left] + (place - left) * (cell_volts[left + 1] - cell_volts[left]));
  double power = now->current * (motor_constant * now->motor_speed + now->current * motor_ohm);
  now->open_volts = open;
  now->pack_current = (open - sqrt(most(0, open * open - 4 * pack_ohm * power))) / (2 * pack_ohm);
  now->pack_volts = open - now->pack_current * pack_ohm;
}

static double upper_cause, lower_cause;

static void cut_upper(struct moment *now, double limit, double cause) {
  if (limit < now->upper) now->upper = limit, upper_cause = cause;
}

static void cut_lower(struct moment *now, double limit, double cause) {
  if (limit > now->lower) now->lower = limit, lower_cause = cause;
}

/* Causes: 1 drive, 2 brake, 3 voltage, 4 pack out, 5 pack in. */
static void ceilings(struct moment *now) {
  int forward = now->motor_speed >= 0;
  double e = motor_constant * now->motor_speed, open = now->open_volts, ohm = motor_ohm;
  now->upper = now->upper_full = forward ? drive_a : brake_a;
  now->lower_full = forward ? brake_a : drive_a;
  now->lower = -now->lower_full;
  upper_cause = forward ? 1 : 2;
  lower_cause = forward ? 2 : 1;
  double out = least(most_out, open / (2 * pack_ohm));
  double root = sqrt(e * e + 4 * ohm * ((open - out * pack_ohm) * out));
  cut_upper(now, (root - e) / (2 * ohm), 4);
  cut_lower(now, (-root - e) / (2 * ohm), 4);
  double square = e * e - 4 * ohm * ((open + most_in * pack_ohm) * most_in);
  if (square > 0 && e > 0) cut_lower(now, (sqrt(square) - e) / (2 * ohm), 5);
  if (square > 0 && e < 0) cut_upper(now, (-sqrt(square) - e) / (2 * ohm), 5);
  double matched = sqrt(e * e + (open * open * ohm) / pack_ohm);
  double up = least(modulation, (matched + e) / open), down = least(modulation, (matched - e) / open);
  cut_upper(now, (up * open - e) / (ohm + up * up * pack_ohm), 3);
  cut_lower(now, (-down * open - e) / (ohm + down * down * pack_ohm), 3);
  if (now->lower > now->upper) {
    if (forward) now->lower = now->upper;
    else now->upper = now->lower;
    upper_cause = lower_cause = 3;
  }
}

static void control(struct moment *now, int tick) {
  now->load += load_follow * (now->request - now->load);
  if (lift_most > 0) {
    double goal = lift_most * most(0, least(1, 1 - now->headroom / lift_below));
    now->lift += within(lift_step, goal - now->lift);
  }
  now->set_point = trim + load_set_point * now->load - now->lift;
  double error = (now->pitch - now->set_point) * DEG_PER_RAD;
  double ramp = takes_over && ramp_s > 0 ? least(1, (tick * dt) / ramp_s) : 1;
  double asked = ramp * (P * error * (1 + progressive * fabs(error)) + D * now->rate * DEG_PER_RAD + now->integral) +
                 load_share * now->load;
  now->asked = most(now->request - slew, least(now->request + slew, asked));
  now->binding = now->asked > now->upper ? upper_cause : now->asked < now->lower ? lower_cause : 0;
  now->request = now->asked > now->upper ? now->upper : now->asked < now->lower ? now->lower : now->asked;
  double above = (now->upper - now->request) / now->upper_full, under = (now->request - now->lower) / now->lower_full;
  now->headroom = most(0, least(1, least(above, under)));
  if (!((asked - now->request) * error > 0)) now->integral = within(I_limit, now->integral + I * error * dt);
}

/* What reaches the rider now, between two ticks of a ring. */
static double late(const double *past, int tick, int slots) {
  int whole = (int)floor(rider_delay);
  double recent = past[(tick - whole + 2 * slots) % slots], before = past[(tick - whole - 1 + 2 * slots) % slots];
  return recent + (rider_delay - whole) * (before - recent);
}

static void feel(struct moment *now, int tick) {
  const int slots = rider_slots();
  past_lean[tick % slots] = now->state[LEAN];
  past_lean_rate[tick % slots] = now->state[LEAN + RATE];
  past_speed[tick % slots] = now->state[X + RATE];
  double speed = late(past_speed, tick, slots), error = wanted_speed[tick] - speed, wished = error / speed_time;
  double asked = most(-brake_wish, least(drive_wish, wished)), before = now->lean_trim;
  int insisting = now->smooth * asked > 0.9 * asked * asked;
  int straying = insisting && wished * (speed - now->last_speed) < 0;
  int held = asked != wished && wished * before >= 0 && !straying;
  double drift = held ? 0 : trim_rate * (straying ? asked * speed_time : error);
  double in_g = now->smooth / G, lean = lean_gain * atan(in_g) + before;
  now->last_speed = speed;
  now->lean_trim = within(0.25, before + drift * dt);
  double lean_rate = (lean_gain * now->smooth_rate) / (G * (1 + in_g * in_g)) + (now->lean_trim - before) / dt;
  now->rider_torque = -thrust * now->smooth - stiffness * (late(past_lean, tick, slots) - lean) -
                      damping * (late(past_lean_rate, tick, slots) - lean_rate) - nose_down[tick];
  double gap = now->smooth - asked, pull = now->smooth_rate + smoothing * gap;
  now->smooth = asked + smoothing_keep * (gap + pull * dt);
  now->smooth_rate = smoothing_keep * (now->smooth_rate - smoothing * pull * dt);

  while (now->piece + 1 < pieces && now->state[X] >= piece_start[now->piece + 1]) now->piece++;
  while (now->piece > 0 && now->state[X] < piece_start[now->piece]) now->piece--;
  now->shove = shoves[tick];
  now->grip = grip[now->piece];
  now->rolling = rolling[now->piece];
}
