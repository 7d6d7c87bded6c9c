# The same sums by general-purpose tools: Rscript compare.R DATA.csv
# prints what, estimate, seconds a run (median of batches, warm).
suppressMessages(library(lme4))
d <- read.csv(commandArgs(TRUE)[1])
d$series <- factor(seq_len(nrow(d)))

timed <- function(run) {
  value <- run()
  seconds <- sapply(1:5, function(batch) {
    runs <- 0
    start <- proc.time()[["elapsed"]]
    repeat {
      run()
      runs <- runs + 1
      spent <- proc.time()[["elapsed"]] - start
      if (spent > 0.3) return(spent / runs)
    }
  })
  c(value, median(seconds))
}

exact <- function() {
  fit <- glmer(cbind(events, total - events) ~ 1 + (1 | series), d, binomial, nAGQ = 25,
               control = glmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9),
                                      calc.derivs = FALSE))
  fixef(fit)[[1]]
}

y <- d$effect
v <- d$variance
minusRestricted <- function(tau2) {
  w <- 1 / (v + tau2)
  mu <- sum(w * y) / sum(w)
  (sum(log(v + tau2)) + log(sum(w)) + sum(w * (y - mu)^2)) / 2
}
mean_at <- function(tau2) { w <- 1 / (v + tau2); sum(w * y) / sum(w) }
# over mean and log tau, as one would write it for any likelihood
minusBoth <- function(p) {
  s <- v + exp(2 * p[2])
  (sum(log(s)) + log(sum(1 / s)) + sum((y - p[1])^2 / s)) / 2
}
several <- function() optim(c(mean(y), log(sd(y))), minusBoth, control = list(reltol = 1e-12, maxit = 5000))$par[1]
single <- function() mean_at(optimize(minusRestricted, c(0, 10 * var(y)), tol = 1e-9)$minimum)

report <- function(what, run) {
  r <- timed(run)
  cat(sprintf("%s,%.15g,%.9g\n", what, r[1], r[2]))
}
report("exact likelihood at 25 points against a mixed-model library", exact)
report("restricted likelihood against a general search", several)
report("restricted likelihood against a search over one number", single)
