# Counts explained by moderators by adaptive quadrature of 25 points, by the general mixed-model
# library lme4, beside count_regression.py. For CountRegressionTest.
library(lme4)
published <- "core/src/test/resources/published"
tell <- function(name, formula, data, family) {
  fit <- glmer(formula, data, family, nAGQ = 25,
               control = glmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10)))
  cat(name, "\n")
  print(cbind(estimate = fixef(fit), error = sqrt(diag(vcov(fit)))), digits = 9)
  cat("tau", format(getME(fit, "theta"), digits = 9), "\n")
}
adherence <- read.csv(file.path(published, "adherence-proportions/adherence-proportions.csv"))
tell("adherence, quality of care",
     cbind(events, total - events) ~ care_quality + (1 | study), adherence, binomial)
tell("adherence, quality of care and ethnicity",
     cbind(events, total - events) ~ care_quality + ethnicity + (1 | study), adherence, binomial)
stroke <- read.csv(file.path(published, "stroke-rates/stroke-rates.csv"))
stroke$since <- stroke$year - 1990
tell("stroke, rates of the controls by year less 1990",
     control_events ~ since + offset(log(control_time)) + (1 | study), stroke, poisson)
