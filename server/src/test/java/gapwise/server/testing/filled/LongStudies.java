package gapwise.server.testing.filled;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.testing.Invented;
import java.util.ArrayList;
import java.util.List;

/**
 * Studies that strain a page: two hundred series, twelve authors and a title of four lines, the
 * longest name of a method, every patient with an event, none with one, one series alone.
 */
final class LongStudies {
  private static final int MANY = 200;
  private static final String AUTHORS =
      "Brisquell A; Ivernook B; Castlemarch C; Dunmallow D; Everholm E; Fennimoor F; Garthwold G;"
          + " Hollinbeck H; Isendale I; Jorvington J; Kestermere K; Lavenhythe L";

  private LongStudies() {}

  static List<Study> all() {
    List<Study> all = new ArrayList<>(Invented.many(MANY));
    String longest = "internal-bone-transport";
    all.add(study("long-a", "Brisquell-Castlemarch", longest, 18, 18, 0));
    all.add(study("long-b", "Ivernook", longest, 24, 24, 0));
    all.add(study("long-c", "Everholm", longest, 31, 31, 0));
    all.add(study("alone", "Fennimoor", "vascularised-bone-flap", 9, 11, 2));
    return List.copyOf(all);
  }

  static void shown(Filling filling, String session) {
    filling.shows("many: list of 200 series", "/studies?outcome=union", session);
    filling.shows(
        "many: pooled of 200 series", "/pooled?outcome=union&method=bone-transport", session);
    filling.shows("many: all methods", "/pooled?outcome=union", session);
    filling.shows(
        "all had it: longest method",
        "/pooled?outcome=primary-union&method=internal-bone-transport",
        session);
    filling.shows(
        "nobody had it: longest method",
        "/pooled?outcome=refracture&method=internal-bone-transport",
        session);
    filling.shows(
        "a time: longest method",
        "/pooled?outcome=time-to-union&method=internal-bone-transport",
        session);
    filling.shows(
        "one series alone", "/pooled?outcome=primary-union&method=vascularised-bone-flap", session);
    filling.shows(
        "side by side: longest names",
        "/compare?method=internal-bone-transport&method=vascularised-bone-flap"
            + "&method=bone-transport&whole=yes",
        session);
    filling.shows("study: twelve authors", "/studies/long-a", session);
  }

  private static Study study(
      String id, String author, String method, int united, int patients, int broken) {
    return Study.with(
            id,
            Citation.with(
                    "Transport of bone inside the limb by a nail that lengthens itself, for"
                        + " infected missing bone of the tibial shaft after open fractures with"
                        + " loss of skin and muscle: an invented series of two hospitals that do"
                        + " not exist")
                .firstAuthor(author)
                .authors(AUTHORS)
                .year(2030)
                .journal("Invented Annals of Limb Reconstruction and Bone Infection")
                .build())
        .design(Design.RETROSPECTIVE_SERIES)
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of(method)))
                    .baseline(Baseline.with().patients(patients).build())
                    .build()))
        .outcomes(
            List.of(
                events("primary-union", united, patients),
                events("refracture", broken, patients),
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("time-to-union"),
                        new ReportedValue.Quantity(
                            QuantitySummary.with(Unit.MONTHS)
                                .n(patients)
                                .mean(11 + patients / 10.0)
                                .standardDeviation(3)
                                .build()))
                    .clock(Clock.DEFINITIVE_OPERATION)
                    .build()))
        .build();
  }

  private static OutcomeReport events(String outcome, int events, int total) {
    return OutcomeReport.with(
            new Scope.OneArm("A"),
            Outcome.of(outcome),
            new ReportedValue.Events(EventCount.of(events, total)))
        .build();
  }
}
