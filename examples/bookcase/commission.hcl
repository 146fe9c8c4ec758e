# Two-part bookcase: white oak, for an out-of-true niche and heavy books.

commission "bookcase" {
  title  = "Two-part bookcase"
  client = "a translator with a small third-floor flat"
  brief  = "Dictionaries at 34 lb per foot of shelf, in a niche that is not true, up in a small lift."
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

wood "oak" {
  species  = "white oak"
  cut      = "quarter"
  moisture = 9.5
}

wood "flat oak" {
  species  = "white oak"
  cut      = "flat"
  moisture = 9.5
}

sizes {
  case_width = 38 1/2
  board      = 7/8
}

case "base" {
  on        = "plinth"
  width     = case_width
  height    = 26 1/4
  depth     = 14
  thickness = board
  wood      = "oak"

  corners {
    joint = "through dovetail"
  }

  back {
    style     = "shiplap"
    thickness = 3/8
    inset     = 3/8
    rabbet    = 3/8
  }

  inside {
    row "drawer" {
      height = 5

      drawer {
        pull = "pull"

        front {
          thickness = 3/4
        }

        sides {
          thickness = 7/16
        }

        back {
          thickness = 3/8
        }

        bottom {
          thickness = 5/16
        }
      }
    }

    rail {
      thickness = 3/4
    }

    row "doors" {
      door {
        pair      = true
        thickness = 3/4
        hinges    = "butt hinge"
        pull      = "knob"

        panel {
          wood      = "oak"
          thickness = 3/8
        }
      }

      shelves {
        count      = 1
        adjustable = true
        thickness  = 3/4
        depth      = 11
        load       = 34
      }
    }
  }
}

stand "plinth" {
  style     = "plinth"
  under     = "base"
  height    = 3 1/2
  thickness = 3/4
  setback   = 1
  inset     = 0
  wood      = "oak"
}

top "base top" {
  on             = "base"
  width          = 39 1/4
  depth          = 14 3/8
  thickness      = 3/4
  overhang_back  = 0
  wood           = "oak"
}

case "upper" {
  on        = "base top"
  width     = case_width
  height    = 56 3/4
  depth     = 10 3/4
  thickness = board
  wood      = "oak"

  corners {
    joint = "through dovetail"
  }

  back {
    style     = "shiplap"
    thickness = 3/8
    inset     = 3/8
    rabbet    = 3/8
  }

  inside {
    shelves {
      count      = 4
      adjustable = true
      thickness  = 3/4
      depth      = 10
      load       = 34
    }
  }
}

hardware "butt hinge" {
  kind      = "butt hinge"
  count     = 2
  length    = 2
  width     = 5/8
  thickness = 5/64
  price     = 16
}

hardware "pull" {
  kind     = "pull"
  count    = 2
  diameter = 3/4
  price    = 11
}

hardware "knob" {
  kind     = "knob"
  count    = 1
  diameter = 3/4
  price    = 9
}

hardware "shelf pin" {
  kind     = "shelf pin"
  count    = 20
  diameter = 1/4
  price    = 0.4
}

site {
  wall = "brick, plastered; surveyed in millimetres"

  passage "lift car" {
    width  = "1100 mm"
    depth  = "800 mm"
    height = "2000 mm"
  }

  niche {
    width {
      up = 0
      is = "1012 mm"
    }

    width {
      up = "1200 mm"
      is = "1004 mm"
    }

    width {
      up = "2100 mm"
      is = "1009 mm"
    }

    ceiling            = ["2392 mm", "2381 mm"]
    skirting_height    = "92 mm"
    skirting_thickness = "17 mm"
    floor_fall         = 9 # millimetres per metre, down to the left
  }
}
