package gapwise.decision.cost;

import java.util.ArrayList;
import java.util.List;

/**
 * The cohort of one method, month by month: stages of treatment, infected, awaiting an operation,
 * healed, not healed, amputated, dead. docs/methods/cost.md says what is assumed.
 *
 * @param stages planned stages
 * @param inputs how patients fare
 * @param entries months that an infection and waiting last, chances of dying, years to look ahead
 * @param kind of the method
 */
record CourseChain(int stages, CourseInputs inputs, CostEntries entries, MethodCourse.Kind kind) {
  static final int MONTHS = 12;

  int infected() {
    return stages;
  }

  int awaiting() {
    return stages + 1;
  }

  int healed() {
    return stages + 2;
  }

  int notHealed() {
    return stages + 3;
  }

  int amputated() {
    return stages + 4;
  }

  int dead() {
    return stages + 5;
  }

  private int all() {
    return stages + 6;
  }

  List<String> states() {
    List<String> states = new ArrayList<>();
    for (int stage = 1; stage <= stages; stage++) {
      states.add(stages == 1 ? "in treatment" : "in treatment, stage " + stage);
    }
    states.addAll(
        List.of("infected", "awaiting an operation", "healed", "not healed", "amputated", "dead"));
    return List.copyOf(states);
  }

  int cycles() {
    return (int) Math.round(MONTHS * entries.mean(Entry.HORIZON_YEARS));
  }

  /** Of those whose treatment ends, who heals: scaled with the amputated to at most all. */
  double shareHealed() {
    return kind == MethodCourse.Kind.AMPUTATION ? 0 : inputs.joined() / Math.max(1, ended());
  }

  double shareAmputated() {
    return kind == MethodCourse.Kind.AMPUTATION ? 1 : inputs.amputated() / Math.max(1, ended());
  }

  private double ended() {
    return inputs.joined() + inputs.amputated();
  }

  /** Whether more than all patients would be healed or amputated. */
  boolean isScaled() {
    return kind == MethodCourse.Kind.RECONSTRUCTION && ended() > 1 + 1e-12;
  }

  /**
   * Months of one stage: what infection and waiting leave of the months in treatment, in equal
   * parts. Half a month is added, since those who leave a month leave in its middle.
   */
  private double monthsOfStage() {
    double others =
        inputs.infected() * entries.mean(Entry.MONTHS_INFECTED)
            + inputs.reoperated() * entries.mean(Entry.MONTHS_AWAITING);
    return (inputs.months() + 0.5 - others) / stages;
  }

  /** Whether a stage would be shorter than a month, and is made one. */
  boolean isLengthened() {
    return monthsOfStage() < 1 - 1e-12;
  }

  /** The chance of dying in a month of a year, from 1. */
  double death(int year) {
    double ofYear =
        entries.mean(Entry.DEATH_FIRST_YEAR)
            * Math.pow(entries.mean(Entry.DEATH_GROWTH), year - 1.0);
    return Chances.ofMonth(Math.min(1, ofYear));
  }

  static int year(int cycle) {
    return (cycle - 1) / MONTHS + 1;
  }

  Trace run() {
    double[] start = new double[all()];
    start[0] = 1;
    List<double[][]> years = new ArrayList<>();
    for (int year = 1; year <= year(cycles()); year++) {
      years.add(chances(death(year)));
    }
    return new Chain(states(), start, cycle -> years.get(year(cycle) - 1), cycles()).run();
  }

  private double[][] chances(double death) {
    double[][] rows = new double[all()][all()];
    double leave = 1 / Math.max(1, monthsOfStage());
    for (int stage = 0; stage < stages; stage++) {
      rows[stage][stage] = 1 - leave;
      if (stage + 1 < stages) {
        rows[stage][stage + 1] = leave;
      }
    }
    double infection = inputs.infected();
    double operation = inputs.reoperated();
    double[] last = rows[stages - 1];
    last[infected()] = leave * infection;
    last[awaiting()] = leave * (1 - infection) * operation;
    end(last, leave * (1 - infection) * (1 - operation));
    double over = 1 / entries.mean(Entry.MONTHS_INFECTED);
    rows[infected()][infected()] = 1 - over;
    rows[infected()][awaiting()] = over * operation;
    end(rows[infected()], over * (1 - operation));
    double operated = 1 / entries.mean(Entry.MONTHS_AWAITING);
    rows[awaiting()][awaiting()] = 1 - operated;
    end(rows[awaiting()], operated);
    for (int state = healed(); state <= dead(); state++) {
      rows[state][state] = 1;
    }
    for (int state = 0; state < dead(); state++) {
      for (int to = 0; to < dead(); to++) {
        rows[state][to] *= 1 - death;
      }
      rows[state][dead()] = death;
    }
    return rows;
  }

  private void end(double[] row, double chance) {
    row[healed()] += chance * shareHealed();
    row[amputated()] += chance * shareAmputated();
    row[notHealed()] += chance * Math.max(0, 1 - shareHealed() - shareAmputated());
  }
}
