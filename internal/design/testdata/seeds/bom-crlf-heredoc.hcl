commission "x" { units = "mm" }
wood "é" {
  species = <<-END
    o ${ak}
  END
}
