commission "👩‍🔧" {
  title = "é́" x
}
