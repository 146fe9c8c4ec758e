# Hall cabinet for keys and post: cherry and ash, hung on an old plaster wall.

commission "hall-cabinet" {
  title  = "Hall cabinet for keys and post"
  client = "a piano teacher"
  brief  = "Pupils queue in a narrow hall: keys out of sight behind a door, two upright slots for letters up to 6 × 9, two small drawers, a bowed ledge for the day's post."
  units  = "in"
  rule   = 1/32
  gaps   = 1/64
  budget = 5000
}

season {
  dry         = 30 # % RH, heated winter
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

wood "cherry" {
  species  = "black cherry"
  cut      = "flat"
  moisture = 7.5
}

wood "ash" {
  species  = "white ash"
  cut      = "flat"
  moisture = 7
}

sizes {
  side  = 9/16
  inset = 7/8 # 5/16 back boards and 9/16 for the cleat
}

curve "bow" {
  shape = "batten"
  chord = 20
  rise  = 1 1/2
  flats = 1 1/4
}

case "cabinet" {
  width     = 20 1/2
  height    = 26 3/4
  depth     = 5 3/8
  thickness = side
  wood      = "cherry"
  hung      = true

  corners {
    joint = "through dovetail"
    slope = "1:8"
  }

  back {
    style     = "shiplap"
    wood      = "cherry"
    thickness = inset - side
    inset     = inset
    rabbet    = 3/8
  }

  cleat {
    thickness = side
    height    = 2
    bevel     = "45 deg"
  }

  drawers {
    joint      = "half-blind dovetail"
    back_joint = "through dovetail"
    pull       = "drawer pull"

    front {
      wood      = "cherry"
      thickness = 1/2
    }

    sides {
      wood      = "ash"
      thickness = 5/16
    }

    back {
      wood      = "ash"
      thickness = 1/4
    }

    bottom {
      wood      = "ash"
      thickness = 3/16
    }
  }

  # What you see from the front, from the top down and from left to right.
  inside {
    row "upper" {
      column "keys" {
        door {
          hinge       = "left"
          wood        = "cherry"
          thickness   = 5/8
          stile       = 1 3/4
          top_rail    = 1 3/4
          bottom_rail = 2 1/4
          hinges      = "knife hinge"
          pull        = "door knob"
          catch       = "magnet"

          panel {
            wood      = "ash"
            thickness = 1/4
            leaves    = 2
            match     = "book"
          }
        }
      }

      partition {
        thickness = 1/2
        housed    = 3/16
      }

      column "letters" {
        width = 6 1/2

        shelf {
          up        = 11 1/4
          thickness = 3/8
          housed    = 3/16
        }
      }
    }

    divider {
      thickness = 1/2
      housed    = 3/16
    }

    row "drawers" {
      height = 3 1/4

      column "left" {
        drawer {}
      }

      partition {
        thickness = 3/8
        housed    = 3/16
      }

      column "right" {
        drawer {}
      }
    }
  }
}

ledge "ledge" {
  under     = "cabinet"
  width     = 22 1/2
  depth     = 5 3/8
  thickness = 7/16
  wood      = "cherry"
  front     = "bow"
}

match "drawer fronts" {
  kind  = "run"
  parts = ["cabinet.drawers.left.front", "cabinet.drawers.right.front"]
}

match "case" {
  kind  = "ring"
  parts = ["cabinet.side.*", "cabinet.top", "cabinet.bottom"]
}

# Sizes measured on the hardware in hand.
hardware "knife hinge" {
  kind      = "hinge"
  count     = 2
  length    = 1 1/2
  width     = 5/16
  thickness = 3/32
  price     = 18
}

hardware "door knob" {
  kind     = "knob"
  count    = 1
  diameter = 5/8
  price    = 9
}

hardware "drawer pull" {
  kind     = "pull"
  count    = 1
  diameter = 1/2
  price    = 7
}

hardware "magnet" {
  kind     = "catch"
  count    = 1
  diameter = 3/8
  price    = 2
}

hardware "hook" {
  kind    = "hook"
  count   = 9
  length  = 1 1/8
  price   = 3
  opening = "cabinet.upper.keys"
}

site {
  wall       = "old plaster on lath"
  studs_from = "door casing"
  studs      = [12 1/2, 28 1/4, 44 1/8]
  free_wall  = [6, 44]
  projection = 7
}
