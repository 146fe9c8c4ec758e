commission "x" {}
sizes {
  a = b - 1/3
  b = 2 * a
  c-d = 1
}
