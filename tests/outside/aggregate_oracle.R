# An independent reckoner of compound distributions: R's actuar. One case a line on stdin, as "poisson 2.5 : 0 0.5
# 0.5" (mean) or "mixed 9 2.4 : 0.1 0.9" (shape, and rate over the span ahead of a gamma belief), then the chances of
# amounts 0, 1, 2, ...; several such parts with "|" between them are added up. The first probabilities of each come
# back, one line for one case; with the words "time POINTS" only the seconds its sums took over so many points.
suppressPackageStartupMessages(library(actuar))
words <- commandArgs(trailingOnly = TRUE)
timing <- length(words) == 2 && words[1] == "time"
points <- if (timing) as.integer(words[2]) else 120
aggregate <- function(part) {
  sides <- strsplit(part, ":")[[1]]
  words <- strsplit(trimws(sides[1]), " +")[[1]]
  severity <- as.numeric(strsplit(trimws(sides[2]), " +")[[1]])
  figures <- as.numeric(words[-1])
  F <- if (words[1] == "poisson") {
    aggregateDist("recursive", model.freq = "poisson", model.sev = severity, lambda = figures[1],
                  tol = 1e-13, maxit = 20000)
  } else {
    aggregateDist("recursive", model.freq = "negative binomial", model.sev = severity, size = figures[1],
                  prob = figures[2] / (figures[2] + 1), tol = 1e-13, maxit = 20000)
  }
  diff(c(0, F(0:(points - 1))))
}
whole <- function(line) {
  total <- c(1, rep(0, points - 1))
  for (part in strsplit(line, "|", fixed = TRUE)[[1]]) {
    one <- aggregate(part)
    # By the fast Fourier transform, as R's own convolve() does.
    total <- convolve(total, rev(one), type = "open")[1:points]
  }
  total
}
input <- file("stdin")
lines <- readLines(input)
close(input)
if (timing) {
  cat(system.time(for (line in lines) whole(line))[["elapsed"]], "\n")
} else {
  for (line in lines) cat(format(whole(line), digits = 15, scientific = TRUE), "\n")
}
