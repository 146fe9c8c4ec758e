# Bow-front sideboard: walnut, maple inside.

commission "sideboard" {
  title  = "Bow-front sideboard"
  client = "a couple, for their own dining room"
  brief  = "Seats twelve; one long curve of grain across the top drawers."
  units  = "in"
  rule   = 1/32
  gaps   = 1/64
}

season {
  dry         = 30
  damp        = 60
  temperature = 70
}

shop {
  humidity        = 38
  temperature     = 70
  smallest_chisel = 1/8
  saw_kerf        = 1/8
  resaw_kerf      = 1/16
  resaw_height    = 10
  planer_width    = 12
  shortest_part   = 12
}

wood "walnut" {
  species  = "black walnut"
  cut      = "flat"
  moisture = 7.5
}

wood "maple" {
  species  = "sugar maple"
  cut      = "quarter"
  moisture = 7
}

sizes {
  case_width = 57
  bay        = 17
  rail       = 3/4
}

curve "bow" {
  shape = "arc"
  chord = case_width
  rise  = 2 1/2
}

drawers {
  joint      = "half-blind dovetail"
  back_joint = "through dovetail"
  pull       = "drawer pull"

  front {
    wood      = "walnut"
    thickness = 7/8
  }

  sides {
    wood      = "maple"
    thickness = 7/16
  }

  back {
    wood      = "maple"
    thickness = 3/8
  }

  bottom {
    wood      = "maple"
    thickness = 1/4
  }
}

doors {
  wood        = "walnut"
  thickness   = 7/8
  stile       = 2 1/4
  top_rail    = 2 1/4
  bottom_rail = 2 3/4
  hinges      = "butt hinge"
  pull        = "door pull"
  catch       = "magnet"

  panel {
    wood      = "walnut"
    thickness = 3/8
    leaves    = 2
    match     = "book"
  }
}

case "carcase" {
  on        = "stand"
  width     = case_width
  height    = 28 5/8
  depth     = 15 # at the sides; the crown of the bow adds its rise
  thickness = 7/8
  wood      = "walnut"
  front     = "bow"

  corners {
    joint = "through dovetail"
  }

  top_rails {
    thickness = 3/4
    width     = 3
  }

  back {
    style     = "shiplap"
    wood      = "maple"
    thickness = 1/2
    inset     = 1/2
    rabbet    = 7/16
  }

  inside {
    column "left" {
      width = bay

      row "top" {
        height = 5 1/4
        drawer {}
      }

      rail {
        thickness = rail
      }

      row "door" {
        door {
          hinge = "left"
        }
      }
    }

    partition {
      thickness = 3/4
    }

    column "middle" {
      row "top" {
        height = 5 1/4
        drawer {}
      }

      rail {
        thickness = rail
      }

      row "bank" {
        bank {
          drawers = 3
          step    = 5/8 # each this much higher than the one above

          rail {
            thickness = rail
          }
        }
      }
    }

    partition {
      thickness = 3/4
    }

    column "right" {
      width = bay

      row "top" {
        height = 5 1/4
        drawer {}
      }

      rail {
        thickness = rail
      }

      row "door" {
        door {
          hinge = "right"
        }
      }
    }
  }
}

stand "stand" {
  style     = "legs"
  under     = "carcase"
  height    = 5
  legs      = 6
  leg       = 1 3/4
  rail      = 2
  thickness = 7/8
  setback   = 2
  inset     = 1
  wood      = "walnut"
}

top "top" {
  on             = "carcase"
  thickness      = 7/8
  overhang_front = 3/4
  overhang_ends  = 3/4
  overhang_back  = 0
  front          = "bow"
  wood           = "walnut"
}

match "top drawer fronts" {
  kind  = "run"
  parts = ["carcase.*.top.front"]
}

match "bank fronts" {
  kind  = "run"
  parts = ["carcase.middle.bank.*.front"]
}

match "case" {
  kind  = "ring"
  parts = ["carcase.side.*", "carcase.bottom"]
}

hardware "butt hinge" {
  kind      = "butt hinge"
  count     = 2
  length    = 2 1/2
  width     = 3/4
  thickness = 3/32
  price     = 24
}

hardware "drawer pull" {
  kind     = "pull"
  count    = 2
  diameter = 3/4
  price    = 14
}

hardware "door pull" {
  kind     = "pull"
  count    = 1
  diameter = 3/4
  price    = 14
}

hardware "magnet" {
  kind     = "catch"
  count    = 1
  diameter = 3/8
  price    = 2
}

site {
  wall      = "plaster"
  free_wall = [0, 71] # between door trims

  passage "dining room door" {
    width  = 29 1/2
    height = 80
  }
}
