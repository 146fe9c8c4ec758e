commission "x" {}
case "a" {
  width = 20 1/2"
  height = 5½ - 3
  depth = [1,
  back {
}
