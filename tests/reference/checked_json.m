## Keeps a structure of numbers in a JSON file, or compares it with the one kept there.
##
## `checked_json (file, values, false)` writes, one entry a line. `checked_json (file, values, true)` prints every value that
## has moved from the file's by more than 1e-9 of the largest number beside it (1e-6 below a field `iterated`, 1e-3 for
## `sensitivityAtRadPerS`), and returns their count.

function drifted = checked_json (file, values, check)
  drifted = 0;
  if (check)
    drifted = report_drift (values, jsondecode (fileread (file)), "", 1e-9);
  else
    text = to_json (values, "", 0);
    handle = fopen (file, "w");
    fprintf (handle, "%s\n", text);
    fclose (handle);
  endif
endfunction

function text = to_json (value, indent, before)
  ## JSON, one entry a line and a row of numbers a line, 15 digits; `before` characters stand before it on its line.
  deeper = [indent, "  "];
  if (isstruct (value))
    names = fieldnames (value);
    entry = @(name) [deeper, "\"", name, "\": ", to_json(value.(name), deeper, numel (deeper) + numel (name) + 4)];
    text = ["{\n", strjoin(cellfun (entry, names', "uniformoutput", false), ",\n"), "\n", indent, "}"];
  elseif (iscell (value))
    entry = @(part) [deeper, to_json(part, deeper, numel (deeper))];
    text = ["[\n", strjoin(cellfun (entry, value, "uniformoutput", false), ",\n"), "\n", indent, "]"];
  elseif (ischar (value))
    text = ["\"", value, "\""];
  elseif (isscalar (value))
    # Adding zero takes the sign off a zero.
    text = regexprep (sprintf ("%.15g", value + 0), "e([+-])0*", "e$1");
  elseif (isrow (value))
    numbers = arrayfun (@(part) to_json (part, "", 0), value, "uniformoutput", false);
    text = ["[", strjoin(numbers, ", "), "]"];
    if (before + numel (text) + 1 > 110)
      text = ["[\n", filled_lines(numbers, deeper), "\n", indent, "]"];
    endif
  else
    entry = @(k) [deeper, to_json(value(k, :), deeper, numel (deeper))];
    text = ["[\n", strjoin(arrayfun (entry, 1 : rows (value), "uniformoutput", false), ",\n"), "\n", indent, "]"];
  endif
endfunction

function text = filled_lines (numbers, indent)
  ## Numbers with commas, as many to a line of 110 characters as go.
  line = indent;
  text = "";
  for k = 1 : numel (numbers)
    piece = [numbers{k}, repmat(",", 1, k < numel (numbers))];
    if (numel (line) > numel (indent) && numel (line) + 1 + numel (piece) > 110)
      text = [text, line, "\n"];
      line = [indent, piece];
    elseif (numel (line) == numel (indent))
      line = [line, piece];
    else
      line = [line, " ", piece];
    endif
  endfor
  text = [text, line];
endfunction

function count = report_drift (now, stored, path, tolerance)
  ## Prints every value that has moved by more than the tolerance, in shares of the largest number beside it; their count.
  count = 0;
  if (isstruct (now) && isstruct (stored))
    for [value, name] = now
      allowed = tolerance;
      if (strcmp (name, "iterated"))
        allowed = 1e-6;
      elseif (strcmp (name, "sensitivityAtRadPerS"))
        allowed = 1e-3;
      endif
      if (! isfield (stored, name))
        printf ("%s.%s is not in the file\n", path, name);
        count += 1;
      else
        count += report_drift (value, stored.(name), [path, ".", name], allowed);
      endif
    endfor
    count += numel (setdiff (fieldnames (stored), fieldnames (now)));
  elseif (iscell (now))
    if (! iscell (stored))
      stored = num2cell (stored(:)');
    endif
    for k = 1 : max (numel (now), numel (stored))
      count += report_drift (now{k}, stored{k}, sprintf ("%s[%d]", path, k - 1), tolerance);
    endfor
  elseif (ischar (now))
    count = ! strcmp (now, stored);
  else
    stored = reshape_like (stored, now);
    moved = max (abs (now(:) - stored(:))) / max (max (abs (stored(:))), eps);
    if (! (moved <= tolerance))
      printf ("%s has moved by %.2g\n", path, moved);
      count = 1;
    endif
  endif
endfunction

function stored = reshape_like (stored, now)
  ## Numbers as read, rows and columns as computed; NaN where their count differs.
  if (numel (stored) == numel (now))
    if (isrow (now) || iscolumn (now))
      stored = reshape (stored, size (now));
    endif
  else
    stored = NaN (size (now));
  endif
endfunction
