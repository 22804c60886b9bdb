## Control witness: what Octave's control package says about step responses, margins and pendulums.
##
## It witnesses, independently of the project's own code,
##   stepResponses      step metrics of second- and third-order systems, from `step` on a fine grid
##   margins            margins of textbook loops, from `margin` and `sensitivity`
##   cart               the cart with a pendulum of a public tutorial: model, poles, gains, responses
##   ogata, balance     two textbook carts with a pendulum
##   wheeled            a wheeled pendulum with published parameters
##   servoCart          a pendulum on a cart that follows its position (sampled model)
##   standing           wheel, deck and rider of the test rig about standing: poles, sampled model, margins
## The equations are the linear ones of the sources named beside each, written out here; nothing is read from the project.
##
## Run:   octave-cli tests/reference/control.m            writes control.json beside this file
##        octave-cli tests/reference/control.m --check    recomputes and exits 1 where a value has drifted
##
## A value may drift by 1e-9 of the largest number beside it where the algebra is direct, by 1e-6 where Octave iterates
## (sensitivity peaks) and by 1e-3 where a peak is flat (its frequency). Needs Octave 7 and its control package (Debian: octave-control).

1;  # a script file, not a function file

function found = step_metrics (name, numerator, denominator, duration)
  ## Step metrics on a grid of 0.2 ms by `step`; the extreme values from a parabola through three rows, times by straight lines.
  dt = 2e-4;
  t = (0 : dt : duration)';
  y = step (tf (numerator, denominator), t);
  final = polyval (numerator, 0) / polyval (denominator, 0);
  [peak, peak_time] = top_of (t, y);
  [dip, ~] = top_of (t, -y);
  outside = find (abs (y - final) > 0.02 * abs (final), 1, "last");
  edge = final + 0.02 * abs (final) * sign (y(outside) - final);
  found.name = name;
  found.numerator = numerator;
  found.denominator = denominator;
  found.durationS = duration;
  found.finalValue = final;
  found.overshootPercent = 100 * (peak - final) / final;
  found.peakTimeS = peak_time;
  found.undershootPercent = abs (100 * dip / final);
  found.riseTimeS = first_at (t, y, 0.9 * final) - first_at (t, y, 0.1 * final);
  found.settlingTimeS = t(outside) + dt * (edge - y(outside)) / (y(outside + 1) - y(outside));
  found.sampleS = duration / 20;
  found.samples = y(1 : round (duration / 20 / dt) : end)';
endfunction

function [value, time] = top_of (t, y)
  ## Largest value and its time, from a parabola through the largest row and its neighbours.
  [value, k] = max (y);
  time = t(k);
  if (k > 1 && k < numel (y))
    bend = y(k - 1) - 2 * y(k) + y(k + 1);
    slope = (y(k + 1) - y(k - 1)) / 2;
    value -= slope ^ 2 / (2 * bend);
    time -= slope / bend * (t(2) - t(1));
  endif
endfunction

function time = first_at (t, y, level)
  ## First time at which y reaches a level, by a straight line between rows.
  k = find (y >= level, 1);
  time = t(k - 1) + (t(k) - t(k - 1)) * (level - y(k - 1)) / (y(k) - y(k - 1));
endfunction

function found = margins_of (name, loop)
  ## Gain margin (ratio), phase margin (degrees, -180 to 180), their frequencies (rad/s), delay margin of a loop that has one
  ## (s), sensitivity peak and where. `sensitivity` itself stops at 1 % of the peak, so its norm is asked for 1e-9 here.
  [gain, phase, gain_at, phase_at] = margin (loop);
  found = margin_entries (name, gain, gain_at, phase, phase_at);
  [peak, peak_at] = norm (feedback (tf (1), loop), inf, 1e-9);
  found.iterated.sensitivityPeak = peak;
  found.iterated.sensitivityAtRadPerS = peak_at;
endfunction

function found = margin_entries (name, gain, gain_at, phase, phase_at)
  ## The entries of a loop's margins.
  phase = mod (phase + 180, 360) - 180;
  found.name = name;
  if (isfinite (gain))
    found.gainMargin = gain;
    found.gainCrossingRadPerS = gain_at;
  endif
  found.phaseMarginDeg = phase;
  found.phaseCrossingRadPerS = phase_at;
  if (phase > 0)
    found.delayMarginS = phase / 180 * pi / phase_at;
  endif
endfunction

function found = margins_by_response (name, loop, from, to)
  ## The same from the frequency response of a state-space loop between two frequencies (`margin` loses the crossing of a
  ## sampled loop in the rounding of its polynomials): the last crossing of magnitude 1, the first of -180 degrees above it.
  respond = @(w) freqresp (loop, w)(1);
  w = logspace (log10 (from), log10 (to), 2000);
  response = squeeze (freqresp (loop, w))(:)';
  k = find (abs (response) >= 1, 1, "last");
  phase_at = fzero (@(w) log (abs (respond (w))), w([k, k + 1]));
  phase = 180 + 180 / pi * arg (respond (phase_at));
  below = find (diff (sign (imag (response))) != 0 & real (response(2:end)) < 0 & w(2:end) > phase_at, 1);
  [gain, gain_at] = deal (Inf);
  if (! isempty (below))
    gain_at = fzero (@(w) imag (respond (w)), w([below, below + 1]));
    gain = -1 / real (respond (gain_at));
  endif
  found = margin_entries (name, gain, gain_at, phase, phase_at);
endfunction

function rows = sorted_poles (poles)
  ## Poles as rows [real, imaginary], from the fastest growing down; of a pair the one with the positive imaginary part first.
  rows = [real(poles(:)), imag(poles(:))];
  rows(abs (rows) < 1e-13) = 0;
  rows = sortrows (round_keys (rows), [-3, -4])(:, 1:2);
endfunction

function rows = round_keys (rows)
  ## Sorting keys that rounding does not move.
  rows = [rows, round(rows * 1e6) / 1e6];
endfunction

function values = compute ()
  ## Everything that control.json holds.
  values.stepResponses = { ...
    step_metrics("second order, damping 0.35", [0, 16], [1, 2.8, 16], 10), ...
    step_metrics("second order with a zero that hurries it", [4, 9], [1, 3.6, 9], 8), ...
    step_metrics("third order, oscillating pair behind a slow pole", [0, 60], conv ([1, 2], [1, 2, 30]), 10), ...
    step_metrics("third order, pair slower than its pole", [0, 100], conv ([1, 10], [1, 1.8, 10]), 10), ...
    step_metrics("third order with a zero in the right half-plane", 40 * [-0.35, 1], conv ([1, 4], [1, 2.4, 10]), 10)};
  s = tf ("s");
  values.margins = { ...
    margins_of("25/(s3+10s2+10s+10)", tf (25, [1, 10, 10, 10])), ...
    margins_of("8.75(4s2+0.4s+1)/...", 8.75 * (4 * s ^ 2 + 0.4 * s + 1) / ((100 * s + 1) * (s ^ 2 + 0.22 * s + 1) * (s ^ 2 / 100 + 0.08 * s / 10 + 1))), ...
    margins_of("10/(s(s+1)(s+5))", tf (10, [1, 6, 5, 0])), ...
    margins_of("100/(s(s+1)(s+5))", tf (100, [1, 6, 5, 0])), ...
    margins_of("200/((s+2)(s+4)(s+5))", tf (200, [1, 11, 38, 40]))};
  values.cart = tutorial_cart ();
  carts = textbook_carts ();
  values.ogata = carts.ogata;
  values.balance = carts.balance;
  values.servoCart = carts.servoCart;
  values.wheeled = wheeled_pendulum ();
  values.standing = standing_rig ();
endfunction

function main ()
  pkg load control
  here = fileparts (mfilename ("fullpath"));
  addpath (here);
  source (fullfile (here, "pendulums.m"));
  file = fullfile (here, "control.json");
  check = any (strcmp (argv (), "--check"));
  drifted = checked_json (file, compute (), check);
  if (drifted > 0)
    printf ("%d values of control.json have drifted\n", drifted);
    exit (1);
  elseif (check)
    printf ("control.json: no value has drifted\n");
  endif
endfunction

main ();
