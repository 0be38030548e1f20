"""SVG from plain geometry: finished tubes, sticks with marks, and paper at full size."""
