/*
 * How does the rig move? The equations of src/model/derive.ts, tyre and road included, and all that a ride remembers
 * from one tick to the next, in one flat struct.
 */
enum { X, Z, WHEEL, PITCH, LEAN, LEG, RATE, TREAD = 12, STATES = 13 };
enum { LOAD = STATES, TREAD_FORCE, FEET, FEET_LIMIT, FEET_ACCELERATION, RATES };
static const double G = 9.80665; /* m/s2 */

struct moment {
  double state[STATES], rates[RATES];
  double torque, rider_torque, shove, grip, rolling; /* held inputs */
  double current, motor_speed, charge, pack_current, pack_volts, open_volts, followed;
  double pitch, rate; /* as estimated */
  double upper, lower, upper_full, lower_full, asked, request, headroom, set_point, integral, lift, load, binding;
  double smooth, smooth_rate, lean_trim, last_speed; /* the rider's memory */
  int piece;
};

static double least(double p, double q) { return p < q ? p : q; }
static double most(double p, double q) { return p > q ? p : q; }
static double within(double limit, double value) { return most(-limit, least(limit, value)); }

/* Fills `out` with the derivative of a state under the held inputs of `now`, and forces behind it. */
static void derive(const struct moment *now, const double *s, double *out) {
  /* Road under the axle, tyre, tread. */
  double place = (s[X] - origin) / spacing, height, slope = 0;
  if (!(place > 0 && place < knots - 1)) {
    height = road[place >= knots - 1 ? 2 * (knots - 1) : 0];
  } else {
    int left = (int)place;
    double t = place - left, h0 = road[2 * left], s0 = road[2 * left + 1];
    double rise = road[2 * left + 2] - h0, s1 = road[2 * left + 3];
    double c2 = 3 * rise - 2 * s0 - s1, c3 = s0 + s1 - 2 * rise;
    height = h0 + t * (s0 + t * (c2 + t * c3));
    slope = (s0 + t * (2 * c2 + t * 3 * c3)) / spacing;
  }
  double root = sqrt(1 + slope * slope);
  double slide = r * s[WHEEL + RATE] - (s[X + RATE] + slope * s[Z + RATE]) / root;
  double squash = (height + r - s[Z]) / root, load = 0, tread = 0;
  if (squash > 0) {
    load = most(0, kt * squash - ct_ * ((s[Z + RATE] - slope * s[X + RATE]) / root));
    tread = within(now->grip * load, kx * s[TREAD] + cx * slide);
  }

  /* Legs, feet, air and shove. */
  double theta = s[PITCH], phi = s[LEAN], leg = s[LEG];
  double thetad = s[PITCH + RATE], phid = s[LEAN + RATE], legd = s[LEG + RATE];
  double ct = cos(theta), st = sin(theta), cp = cos(phi), sp = sin(phi);
  double legs = most(0, kl * (L - leg) - cl * legd + m * G);
  double feet = within(legs * half, now->rider_torque - kp * (phi - theta) - cp_ * (phid - thetad));
  double rider_speed = s[X + RATE] + hf * thetad * ct + legd * sp + leg * phid * cp;
  double push = now->shove - air * rider_speed * fabs(rider_speed);

  /* The symmetric system in x'', z'', theta''. */
  double cd = ct * cp + st * sp, sd = sp * ct - cp * st, mu = (m * Ir) / (Ir + m * leg * leg);
  double ankle_turn = hf * thetad * thetad;
  double shear0 = ankle_turn * sd + 2 * legd * phid + (leg * feet) / Ir - (push * cp) / m - G * sp;
  double mass = mw + md, d1x = b * ct - a * st, d1z = -a * ct - b * st;
  double turn = md * thetad * thetad, arm = mu * hf * cd;
  double m11 = mass + mu * cp * cp, m12 = -mu * cp * sp, m22 = mass + mu * sp * sp;
  double m13 = md * d1x + arm * cp, m23 = md * d1z - arm * sp;
  double m33 = Id + md * (a * a + b * b) + arm * hf * cd, per_road = 1 / sqrt(1 + slope * slope);
  double f1 = (tread - slope * load) * per_road - turn * d1z - legs * sp - mu * shear0 * cp;
  double f2 = (load + slope * tread) * per_road - mass * G + turn * d1x - legs * cp + mu * shear0 * sp;
  double f3 = -now->torque - feet - md * G * d1z - hf * legs * sd - arm * shear0;
  double l21 = m12 / m11, l31 = m13 / m11, n22 = m22 - l21 * m12, n23 = m23 - l21 * m13, l32 = n23 / n22;
  double g2 = f2 - l21 * f1;
  double thetadd = (f3 - l31 * f1 - l32 * g2) / (m33 - l31 * m13 - l32 * n23);
  double zdd = (g2 - n23 * thetadd) / n22, xdd = (f1 - m12 * zdd - m13 * thetadd) / m11;

  double shear = mu * (xdd * cp - zdd * sp + hf * thetadd * cd + shear0);
  double resistance = r * now->rolling * load * tanh(s[WHEEL + RATE] / 0.5);
  for (int i = X; i < RATE; i++) out[i] = s[i + RATE];
  out[X + RATE] = xdd;
  out[Z + RATE] = zdd;
  out[WHEEL + RATE] = (now->torque - r * tread - resistance) / Iw;
  out[PITCH + RATE] = thetadd;
  out[LEAN + RATE] = (feet - leg * shear) / Ir;
  out[LEG + RATE] = legs / m + (push * sp) / m - G * cp - (xdd * sp + zdd * cp) - hf * thetadd * sd + ankle_turn * cd +
                    leg * phid * phid;
  out[TREAD] = slide;
  out[LOAD] = load;
  out[TREAD_FORCE] = tread;
  out[FEET] = feet;
  out[FEET_LIMIT] = legs * half;
  out[FEET_ACCELERATION] = zdd - hf * (thetadd * st + thetad * thetad * ct);
}
