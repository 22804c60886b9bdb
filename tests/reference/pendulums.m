## The pendulums of the control witness: carts that carry one, a wheel that carries one, and the test rig about standing.
##
## Read by control.m, whose poles and margins it uses.

1;  # a script file, not a function file

function found = cart_model (M, m, l, I, b, c, g)
  ## Cart M with friction b, pendulum m with inertia I about its centre at l and friction c in its pivot; force on the cart.
  ## States x, x', phi, phi'; phi > 0 leans towards +x (the tutorial's phi has the other sign).
  mass = [M + m, m * l; m * l, I + m * l ^ 2];
  stiffness = [0, 0; 0, m * g * l];
  damping = -[b, 0; 0, c];
  q = [mass \ stiffness, mass \ damping](:, [1, 3, 2, 4]);
  found.A = [0, 1, 0, 0; q(1, :); 0, 0, 0, 1; q(2, :)];
  found.B = [0; mass \ [1; 0]]([1, 2, 1, 3]);
  found.poles = sorted_poles (pole (ss (found.A, found.B, eye (4), zeros (4, 1))));
endfunction

function found = tutorial_cart ()
  ## Control Tutorials for Matlab and Simulink (University of Michigan), "Inverted Pendulum".
  [M, m, l, I, b, g] = deal (0.5, 0.2, 0.3, 0.006, 0.1, 9.8);
  found.parameters = struct ("cartMassKg", M, "massKg", m, "lengthM", l, "inertiaKgM2", I, "frictionNSPerM", b, "gravityMPerS2", g);
  model = cart_model (M, m, l, I, b, 0, g);
  turn = diag ([1, 1, -1, -1]);  # to the tutorial's sign of phi
  A = turn * model.A * turn;
  B = turn * model.B;
  found.A = A;
  found.B = B';
  found.poles = model.poles;
  plant = ss (A, B, eye (4), zeros (4, 1));
  found.lqr = regulator (A, B, diag ([5000, 0, 100, 0]));
  found.lqrOutput = regulator (A, B, diag ([1, 0, 1, 0]));
  C = [1, 0, 0, 0; 0, 0, 1, 0];
  L = place (A', C', [-40, -41, -42, -43])';
  found.observerPoles = sorted_poles (eig (A - L * C));
  printed = [82.6, -1; 1699.2, -40.2; -1.4, 83.2; -76.2, 1760.4];
  found.printedObserverPoles = sorted_poles (eig (A - printed * C));
  ## Step of 0.2 m of the wanted position under the first gains.
  K = found.lqr.gains;
  dt = 2e-4;
  t = (0 : dt : 6)';
  y = step (ss (A - B * K, B * K(1) * 0.2, C, zeros (2, 1)), t);
  [x, phi] = deal (y(:, 1), y(:, 2));
  [back, back_at] = top_of (t, -x);
  [down, down_at] = top_of (t, -phi);
  outside = find (abs (x - 0.2) > 0.004, 1, "last");
  edge = 0.2 + 0.004 * sign (x(outside) - 0.2);
  found.positionStep.riseTimeS = first_at (t, x, 0.18) - first_at (t, x, 0.02);
  found.positionStep.settlingTimeS = t(outside) + dt * (edge - x(outside)) / (x(outside + 1) - x(outside));
  found.positionStep.highestM = max (x);
  found.positionStep.backM = -back;
  found.positionStep.backAtS = back_at;
  found.positionStep.phiLowestRad = -down;
  found.positionStep.phiLowestAtS = down_at;
  found.positionStep.phiHighestRad = top_of (t, phi);
  ## Proportional, integral and rate feedback of phi, an impulse of 1 N s on the cart.
  pendulum = minreal (tf (ss (A, B, [0, 0, 1, 0], 0)), 1e-6);
  [numerator, found.pendulumDenominator] = tfdata (pendulum, "vector");
  found.pendulumNumerator = numerator .* (abs (numerator) > 1e-12);
  found.tuned = pid_response (A, B, [100, 1, 20]);
  found.lightlyDamped = pid_response (A, B, [100, 1, 1]);
  found.weak = pid_response (A, B, [1, 1, 1]);
  # The integral's pole and the pendulum's zero at the origin cancel.
  loop = tf (found.pendulumNumerator(1) * [20, 100, 1], found.pendulumDenominator);
  found.margins = margins_of ("100 + 1/s + 20 s", loop);
  ## The same regulator sampled: 100 times a second, force held.
  T = 0.01;
  sampled = c2d (plant, T, "zoh");
  [Phi, Gamma] = ssdata (sampled);
  found.sampled.tickS = T;
  found.sampled.Phi = Phi;
  found.sampled.Gamma = Gamma';
  Kd = dlqr (Phi, Gamma, diag ([5000, 0, 100, 0]), 1);
  found.sampled.gains = Kd;
  start = [0; 0; 1e-4; 0];
  closed = ss (Phi - Gamma * Kd, Gamma, eye (4), zeros (4, 1), T);
  states = lsim (closed, zeros (301, 1), (0 : 300)' * T, start);
  found.sampled.phiEvery20TicksRad = states(1:20:end, 3)';
  found.sampled.xEvery20TicksM = states(1:20:end, 1)';
endfunction

function found = regulator (A, B, Q)
  ## Linear quadratic regulator with R = 1, its poles, and their frequency and damping by `damp`.
  found.gains = lqr (A, B, Q, 1);
  closed = ss (A - B * found.gains, B, eye (rows (A)), zeros (rows (A), columns (B)));
  found.poles = sorted_poles (pole (closed));
  [wn, zeta] = damp (closed);
  found.frequenciesRadPerS = sort (wn)';
  found.dampingRatios = sort (zeta)';
endfunction

function found = pid_response (A, B, gains)
  ## Poles and largest swings of phi after an impulse of 1 N s under u = -(P phi + I int phi + D phi'); the position is left out.
  ring = [2, 3, 4];
  extended = [A(ring, ring), zeros(3, 1); 0, 1, 0, 0];
  feedback_row = [0, gains(1), gains(3), gains(2)];
  closed = extended - [B(ring); 0] * feedback_row;
  found.gains = gains;
  found.poles = sorted_poles (eig (closed));
  if (max (real (eig (closed))) < 0.001)
    dt = 2e-5;
    t = (0 : dt : 1.5)';
    # `impulse` goes through partial fractions with a tolerance of 1e-4 and is 3e-6 off here. An impulse leaves the state at B, from
    # where `initial` is exact.
    phi = initial (ss (closed, [B(ring); 0], [0, 1, 0, 0], 0), [B(ring); 0], t);
    [found.peakRad, found.peakAtS] = top_of (t, phi);
    found.lowestRad = min (phi);
    outside = find (abs (phi) > 0.02 * found.peakRad, 1, "last");
    if (outside < numel (t))
      found.calmAtS = t(outside);
    endif
  endif
endfunction

function found = textbook_carts ()
  ## K. Ogata, Modern Control Engineering, ch. 10 (5th edition, from memory): M 2, m 0.1, l 0.5; theta, theta', x, x'.
  model = cart_model (2, 0.1, 0.5, 0, 0, 0, 9.81);
  order = [3, 4, 1, 2];
  A = model.A(order, order);
  B = model.B(order);
  found.ogata.A = A;
  found.ogata.B = B';
  found.ogata.poles = model.poles;
  found.ogata.gains = acker (A, B, [-2 + 2i * sqrt(3), -2 - 2i * sqrt(3), -10, -10]);
  widened = [A, zeros(4, 1); 0, 0, -1, 0, 0];
  found.ogata.gainsWithIntegral = acker (widened, [B; 0], [-1 + 1i * sqrt(3), -1 - 1i * sqrt(3), -5, -5, -5]);
  ## K. J. Astrom, R. M. Murray, Feedback Systems (from memory): "balance system", M 10, m 80, J 100, l 1, c 0.1, gamma 0.01.
  model = cart_model (10, 80, 1, 100, 0.1, 0.01, 9.8);
  found.balance.A = model.A;
  found.balance.poles = model.poles;
  free = cart_model (10, 80, 1, 100, 0, 0, 9.8);
  found.balance.undampedPoles = free.poles;
  found.balance.undampedZeros = sorted_poles (zero (ss (free.A, free.B, [1, 0, 0, 0], 0)));
  ## Pendulum on a cart that follows its position, sampled every 0.04 s: applieddigitalcontrols.com, chapter 7.10. States theta,
  ## theta', x, x'. Printed with g / l 32.7 and zeta 0.707; its matrix has the digits of 9.8 / 0.3 and sqrt (1 / 2).
  [w, zeta] = deal (20, sqrt (1 / 2));
  servo = [-w ^ 2, -2 * zeta * w];
  A = [0, 1, 0, 0; 9.8 / 0.3, 0, -servo / 0.3; 0, 0, 0, 1; 0, 0, servo];
  sampled = c2d (ss (A, [0; -w ^ 2 / 0.3; 0; w ^ 2], eye (4), zeros (4, 1)), 0.04, "zoh");
  found.servoCart.tickS = 0.04;
  found.servoCart.Phi = ssdata (sampled);
endfunction

function found = wheeled_pendulum ()
  ## Planar wheeled pendulum, K. Pathak, J. Franch, S. K. Agrawal, IEEE Trans. Robotics 21 (2005) 505 (equations, from memory), with
  ## parameters of public code, not of the paper. States wheel angle, pitch and their rates; friction at the ground and in the motor.
  [mw, Iw, m, I, r, l, cw, cm, g] = deal (0.5313, 0.00273, 8.22, 0.57, 0.101, 0.49, 0.1, 0.1, 9.81);
  mass = [Iw + (mw + m) * r ^ 2, m * r * l; m * r * l, I + m * l ^ 2];
  A = [zeros(2), eye(2); mass \ [0, 0, -cw - cm, cm; 0, m * g * l, cm, -cm]];
  B = [0; 0; mass \ [1; -1]];
  found.A = A;
  found.B = B';
  found.poles = sorted_poles (eig (A));
  Q = diag ([0.01, 10, 0.1, 1]);
  found.lqrGains = lqr (A, B, Q, 3);
  found.lqrPoles = sorted_poles (eig (A - B * found.lqrGains));
  sampled = c2d (ss (A, B, eye (4), zeros (4, 1)), 0.01, "zoh");
  [found.Phi, Gamma] = ssdata (sampled);
  found.Gamma = Gamma';
  found.dlqrGains = dlqr (found.Phi, Gamma, Q, 3);
endfunction

function found = standing_rig ()
  ## Wheel, deck and rider about standing, tyre and legs rigid, by Lagrange: coordinates x (rolled way), pitch, lean. The
  ## wheel turns by x / r; the motor turns it against the deck. Motor with a first-order lag; board gains in A per degree.
  p = struct ("wheelRadiusM", 0.14, "wheelMassKg", 6, "wheelInertiaKgM2", 0.055, "deckMassKg", 8, "deckInertiaKgM2", 0.42, ...
              "deckAboveAxleM", -0.02, "ankleAboveAxleM", 0.03, "riderMassKg", 78, "riderInertiaKgM2", 9.5, "legLengthM", 0.95, ...
              "passiveStiffnessNmPerRad", 60, "passiveDampingNmSPerRad", 8);
  [torque_constant, lag, tick, gains, g] = deal (0.62, 0.0015, 1 / 800, [20, 1.2], 9.80665);
  deck_arm = p.deckMassKg * p.deckAboveAxleM + p.riderMassKg * p.ankleAboveAxleM;
  rider_arm = p.riderMassKg * p.legLengthM;
  mass = [p.wheelMassKg + p.deckMassKg + p.riderMassKg + p.wheelInertiaKgM2 / p.wheelRadiusM ^ 2, deck_arm, rider_arm;
          deck_arm, p.deckInertiaKgM2 + p.deckMassKg * p.deckAboveAxleM ^ 2 + p.riderMassKg * p.ankleAboveAxleM ^ 2, rider_arm * p.ankleAboveAxleM;
          rider_arm, rider_arm * p.ankleAboveAxleM, p.riderInertiaKgM2 + rider_arm * p.legLengthM];
  ankle = [0, 0, 0; 0, 1, -1; 0, -1, 1];
  stiffness = diag ([0, deck_arm * g, rider_arm * g]) - p.passiveStiffnessNmPerRad * ankle;
  A = [zeros(3), eye(3); mass \ [stiffness, -p.passiveDampingNmSPerRad * ankle]];
  B = [zeros(3, 2); mass \ [1 / p.wheelRadiusM, 0; -1, -1; 0, 1]];
  found.parameters = p;
  found.A = A;
  found.B = B;
  found.poles = sorted_poles (eig (A));
  ## The loop broken at the request for current: current lag, plant, gains, one tick of delay, all held over a tick.
  found.loop.torqueConstantNmPerA = torque_constant;
  found.loop.lagS = lag;
  found.loop.tickS = tick;
  found.loop.gainsAPerDeg = gains;
  moved = [A, B(:, 1) * torque_constant; zeros(1, 6), -1 / lag];
  row = gains * [0, 1, 0, 0, 0, 0, 0; 0, 0, 0, 0, 1, 0, 0] * 180 / pi;
  plant = ss (moved, [zeros(6, 1); 1 / lag], -row, 0);
  found.loop.steady = margins_by_response ("continuous", plant, 10, 1e5);
  sampled = c2d (plant, tick, "zoh");
  [found.loop.Phi, Gamma] = ssdata (sampled);
  found.loop.Gamma = Gamma';
  delayed = sampled * ss (0, 1, 1, 0, tick);
  found.loop.sampled = margins_by_response ("sampled, one tick late", delayed, 10, 0.99 * pi / tick);
endfunction
