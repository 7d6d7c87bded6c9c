package gapwise.cohort;

import gapwise.cohort.InventedPaper.Patient;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReportKind;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/**
 * An invented evidence base of which it is known who shares patients: patients are drawn first, and
 * papers are choices among them. Beside the planted pairs stand papers that share nobody, and a
 * hospital, a town or authors with others all the same.
 */
final class InventedCohorts {
  private static final List<String> METHODS =
      List.of(
          "bone-transport",
          "internal-bone-transport",
          "acute-shortening-lengthening",
          "induced-membrane",
          "vascularised-bone-flap",
          "autograft",
          "allograft",
          "printed-scaffold");
  private static final String[] OPENINGS = {
    "Outcomes of",
    "Our experience with",
    "A review of patients treated by",
    "Complications after",
    "Function following",
    "Reconstruction by"
  };
  private static final String[] MATTERS = {
    "traumatic loss of bone",
    "large gaps of the lower limb",
    "segmental defects",
    "missing bone after injury"
  };

  /** A planted pair and what is true of it; empty for two that only look alike. */
  record Planted(String a, String b, Optional<Verdict> truth, String kind) {}

  record Hospital(String name, String town, String country, List<String> staff) {}

  final List<Study> studies = new ArrayList<>();
  final List<Planted> planted = new ArrayList<>();
  final Random random;
  final InventedNames names;
  private final List<Hospital> hospitals = new ArrayList<>();
  private final Set<String> taken = new HashSet<>();
  private int number;

  private InventedCohorts(long seed) {
    random = new Random(seed);
    names = new InventedNames(random);
  }

  /** So many pairs of each kind, and then papers that share nobody until there are so many. */
  static InventedCohorts of(long seed, int pairsOfEachKind, int size) {
    InventedCohorts base = new InventedCohorts(seed);
    for (int i = 0; i < pairsOfEachKind; i++) {
      base.plant();
    }
    for (int i = 0; i < Math.max(10, size / 25); i++) {
      base.hospital();
    }
    while (base.studies.size() < size) {
      base.stranger();
    }
    Collections.shuffle(base.studies, base.random);
    return base;
  }

  private void plant() {
    Hospital h = hospital();
    List<Patient> all = drawn(50, 2003, 2012);
    Study paper = paper(h, 0, all.subList(0, 24), 2014).study();
    add(paper);
    String title =
        random.nextBoolean()
            ? paper.citation().title().toUpperCase()
            : paper.citation().title().replaceFirst(": .*", "");
    Study copy = InventedPaper.copied(paper, nextId(), title, random.nextBoolean());
    pair(paper, add(copy), Verdict.SAME_PAPER, "two ids");

    Hospital translated = hospital();
    Study own = add(paper(translated, 1, drawn(28, 2001, 2009), 2011).study());
    pair(
        own,
        add(
            InventedPaper.copied(
                own, nextId(), "Una serie inventata di " + number + " arti", true)),
        Verdict.SAME_PAPER,
        "title in another language");

    InventedPaper talk = paper(hospital(), 2, drawn(30, 2005, 2010), 2011);
    Hospital meeting = hospitals.get(hospitals.size() - 1);
    talk.kind = ReportKind.ABSTRACT;
    talk.hospitals = random.nextBoolean() ? List.of() : talk.hospitals;
    InventedPaper full = paper(meeting, 2, drawn(33, 2005, 2010), 2013);
    full.title = talk.title;
    full.authors = talk.authors;
    pair(add(talk.study()), add(full.study()), Verdict.OVERLAPPING, "abstract, then article");

    overlap("earlier and longer", 3, people -> people.subList(0, 25), people -> people);
    overlap(
        "only the infected",
        3,
        people -> people,
        people -> people.stream().filter(Patient::infected).toList());
    overlap(
        "only long gaps",
        4,
        people -> people,
        people -> people.stream().filter(p -> p.gap() > 6).toList());
    overlap(
        "two choices among one cohort",
        5,
        people -> InventedPaper.some(people, 30, random),
        people -> InventedPaper.some(people, 28, random));

    Hospital compared = hospital();
    List<Patient> arm = drawn(26, 2004, 2011);
    Study series = add(paper(compared, 4, arm, 2012).study());
    Study both =
        add(
            paper(compared, 4, arm, 2015)
                .treated(METHODS.get(7), "printed", drawn(22, 2006, 2012))
                .study());
    pair(series, both, Verdict.OVERLAPPING, "one arm of a comparison");

    Hospital east = hospital();
    Hospital west = hospital(town(), east.country());
    List<Patient> ofEast = drawn(24, 2002, 2008);
    InventedPaper joint =
        paper(
            east, 0, Stream.concat(ofEast.stream(), drawn(25, 2002, 2008).stream()).toList(), 2012);
    joint.hospitals = List.of(InventedNames.otherwise(east.name(), random), west.name());
    joint.authors =
        Stream.of(
                west.staff().get(0),
                east.staff().get(1),
                west.staff().get(2),
                east.staff().get(3),
                east.staff().get(0))
            .toList();
    InventedPaper alone = paper(east, 0, ofEast, 2010);
    alone.authors = List.of(east.staff().get(0), east.staff().get(1), east.staff().get(5));
    Study jointly = add(joint.study());
    pair(add(alone.study()), jointly, Verdict.OVERLAPPING, "two hospitals together");
    taken.add(west.name() + METHODS.get(0));

    Hospital silent = hospital();
    List<Patient> table = drawn(20, 2000, 2009);
    InventedPaper few = paper(silent, 3, List.of(), 2010);
    few.rows = true;
    few.treated(METHODS.get(3), "spacer", table.subList(0, 9));
    few.hospitals = List.of();
    few.tellsYears = false;
    InventedPaper many = paper(silent, 3, List.of(), 2013);
    many.rows = true;
    many.treated(METHODS.get(3), "membrane", table);
    many.hospitals = List.of();
    many.authors = names.people(4);
    pair(
        add(few.study()),
        add(many.study()),
        Verdict.OVERLAPPING,
        "rows of patients, other authors");

    Hospital inside = hospital();
    List<Patient> whole = drawn(34, 2001, 2009);
    List<Patient> shins = whole.stream().filter(Patient::tibia).toList();
    Study divided =
        add(
            paper(inside, 5, whole, 2012)
                .treated(METHODS.get(5), "grafted, tibia only", shins)
                .study());
    planted.add(
        new Planted(
            divided.id() + "/A",
            divided.id() + "/B",
            Optional.of(Verdict.PART),
            "part beside whole"));

    InventedLookAlikes others = new InventedLookAlikes(this);
    others.possible();
    others.separate();
  }

  private interface Choice {
    List<Patient> of(List<Patient> all);
  }

  private void overlap(String kind, int method, Choice one, Choice two) {
    Hospital h = hospital();
    List<Patient> all = drawn(48, 2002, 2010);
    InventedPaper second = paper(h, method, two.of(all), 2014);
    second.hospitals = List.of(InventedNames.otherwise(h.name(), random));
    pair(
        add(paper(h, method, one.of(all), 2011).study()),
        add(second.study()),
        Verdict.OVERLAPPING,
        kind);
  }

  /** A paper that shares no patient with any other. */
  private void stranger() {
    Hospital h = hospitals.get(random.nextInt(hospitals.size()));
    int method = random.nextInt(METHODS.size());
    int from = 1976 + 4 * random.nextInt(5);
    if (!taken.add(h.name() + METHODS.get(method) + from)) {
      return;
    }
    InventedPaper paper = paper(h, method, drawn(8 + random.nextInt(50), from, from + 2), from + 5);
    paper.tellsYears = random.nextInt(12) > 0;
    paper.hospitals = random.nextInt(15) == 0 ? List.of() : paper.hospitals;
    add(paper.study());
  }

  void pair(Study a, Study b, Verdict truth, String kind) {
    planted.add(new Planted(a.id(), b.id(), Optional.of(truth), kind));
  }

  Study add(Study study) {
    studies.add(study);
    return study;
  }

  String town() {
    return names.town();
  }

  Hospital hospital() {
    return hospital(town(), names.town().toLowerCase().substring(0, 3) + "onia");
  }

  Hospital hospital(String town, String country) {
    Hospital hospital = new Hospital(names.hospital(town), town, country, names.people(10));
    hospitals.add(hospital);
    return hospital;
  }

  List<Patient> drawn(int count, int fromYear, int toYear) {
    return Stream.generate(() -> Patient.drawn(random, fromYear * 12, toYear * 12 + 11, false))
        .limit(count)
        .toList();
  }

  InventedPaper paper(Hospital h, int method, List<Patient> patients, int year) {
    InventedPaper paper = new InventedPaper(nextId(), random);
    String matter = MATTERS[random.nextInt(MATTERS.length)];
    String words = METHODS.get(method).replace('-', ' ');
    paper.title =
        OPENINGS[random.nextInt(OPENINGS.length)]
            + " "
            + words
            + " in "
            + matter
            + (random.nextBoolean() ? ": a series of " + patients.size() : "");
    List<String> staff = new ArrayList<>(h.staff());
    Collections.shuffle(staff, random);
    // The head of the department signs every paper.
    staff.remove(h.staff().get(0));
    paper.authors =
        Stream.concat(staff.stream().limit(3 + random.nextInt(3)), Stream.of(h.staff().get(0)))
            .toList();
    paper.hospitals = List.of(h.name());
    paper.country = h.country();
    paper.year = year;
    paper.journal = "Invented Annals of " + (random.nextBoolean() ? "Limbs" : "Bones");
    paper.identified = random.nextInt(3) > 0;
    return patients.isEmpty() ? paper : paper.treated(METHODS.get(method), "grafted", patients);
  }

  private String nextId() {
    number++;
    return "s" + number;
  }
}
