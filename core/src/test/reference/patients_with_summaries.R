# Fits of patients.csv and arms.csv (invented data) by lme4 1.1-31 in R 4.2.2, from which the expected values of
# PatientsWithSummariesTest come: Rscript core/src/test/reference/patients_with_summaries.R
# Each fit in three lines: coefficients (intercept, within, across, their difference), standard errors of the same, then
# between-study variance and log likelihood.
suppressMessages(library(lme4))
script <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
data <- file.path(dirname(script), "..", "resources", "patients-with-summaries")
rows <- read.csv(file.path(data, "patients.csv"))
arms <- read.csv(file.path(data, "arms.csv"))
rows$mean <- ave(rows$moderator, rows$study)
rows$dev <- rows$moderator - rows$mean
show <- function(f) {
  v <- as.matrix(vcov(f)); b <- fixef(f); k <- c("(Intercept)", "dev", "mean")
  error <- sqrt(v["mean", "mean"] + v["dev", "dev"] - 2 * v["mean", "dev"])
  cat(format(c(b[k], b["mean"] - b["dev"], sqrt(diag(v))[k], error, VarCorr(f)[[1]], logLik(f)), digits = 10), "\n")
}
control <- glmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 0.1, rhoend = 1e-9, maxfun = 1e5))
show(glmer(event ~ dev + mean + (1 | study), rows, binomial, nAGQ = 25, control = control))
both <- rbind(data.frame(study = rows$study, e = rows$event, n = 1, dev = rows$dev, mean = rows$mean),
              data.frame(study = arms$study, e = arms$events, n = arms$total, dev = 0, mean = arms$moderator))
show(glmer(cbind(e, n - e) ~ dev + mean + (1 | study), both, binomial, nAGQ = 25, control = control))
# with more than one point glmer tells the log likelihood relative to that of the observed proportions
cat(format(sum(dbinom(arms$events, arms$total, arms$events / arms$total, log = TRUE)), digits = 12), "\n")
for (reml in c(TRUE, FALSE)) {
  f <- lmer(log(value) ~ dev + mean + (1 | study), rows, REML = reml,
            control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10)))
  show(f); cat(format(sigma(f)^2, digits = 10), "\n")
}
