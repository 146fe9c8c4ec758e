# A first commission. Change what you like; “casewright check” says what it makes of it.

commission "small-cabinet" {
  title = "Small hung cabinet"
  units = "in" # or "mm"; a size in quotes, such as "305 mm", brings its own unit
}

# The room through the year, in percent of relative humidity: wood moves with it.
season {
  dry  = 30
  damp = 60
}

# Outside sizes. Sides, top and bottom meet in dovetails.
case "cabinet" {
  width     = 14
  height    = 20
  depth     = 6 1/2
  thickness = 5/8
  wood      = "cherry"
  hung      = true

  back {
    inset = 7/8
  }

  cleat {}

  # From the top down. A row without a height takes what is left.
  inside {
    row "above" {
      door {
        thickness = 5/8
      }
    }

    divider {
      thickness = 1/2
    }

    row "below" {
      height = 3 1/2
      drawer {}
    }
  }
}
