package gapwise.reference.testing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Searches of four databases invented for tests: papers that do not exist, some of them in several
 * files, each copy with oddities, and publications that belong to a paper. Deterministic for a
 * seed.
 */
public final class InventedSearches {
  private static final List<String> METHODS =
      List.of(
          "plating",
          "nailing",
          "a hinged brace",
          "a vascular graft",
          "a ceramic plug",
          "an external splint",
          "staged casting",
          "a free muscle transfer",
          "rib grafting",
          "an elastic stem",
          "early shortening",
          "traction");

  private static final List<String> STATES =
      List.of(
          "ununited fractures",
          "septic loss of bone",
          "blast wounds",
          "tumour resection",
          "pseudarthrosis",
          "failed fusion",
          "chronic osteomyelitis",
          "a shattered heel",
          "collapse of the talus",
          "loosening",
          "refracture",
          "compartment syndrome",
          "crushed feet",
          "burnt limbs",
          "gas gangrene");

  private static final List<String> BONES =
      List.of(
          "ulna",
          "humerus",
          "clavicle",
          "calcaneus",
          "distal femur",
          "proximal tibia",
          "ankle",
          "fibula",
          "elbow",
          "wrist");

  private static final List<String> PEOPLE =
      List.of(
          "miners",
          "sailors",
          "growing children",
          "dialysis patients",
          "recruits",
          "cyclists",
          "old people",
          "foresters",
          "dancers",
          "prisoners");

  private static final List<String> SUBTITLES =
      List.of(
          "a cohort of %d",
          "experience of one ward with %d limbs",
          "randomised comparison",
          "%d knees followed",
          "cost and benefit",
          "a nested study",
          "lessons from %d failures",
          "what became of %d",
          "a multicentre audit",
          "pitfalls and pearls");

  private static final List<String> JOURNALS =
      List.of(
          "Journal of Imagined Bones|J Imagin Bones",
          "Annals of Unlikely Surgery|Ann Unlikely Surg",
          "Acta Fabulae Orthopaedica|Acta Fab Orthop",
          "Archiv f\u00fcr Erdachte Chirurgie|Arch Erdachte Chir",
          "Bulletin of Fictional Trauma & Repair|Bull Fict Trauma Repair",
          "International Review of Dreamt Limbs|Int Rev Dreamt Limbs",
          "Cahiers de Chirurgie Feinte|Cah Chir Feinte",
          "The Fancied Foot|Fancied Foot");

  private static final List<String> SYLLABLES =
      List.of(
          "bran",
          "kol",
          "tej",
          "mur",
          "ves",
          "lin",
          "d\u00f6r",
          "sza",
          "pil",
          "rog",
          "h\u00e5k",
          "nev",
          "gar",
          "fu\u00df",
          "z\u00fcl",
          "\u010der",
          "ost",
          "wim",
          "qua",
          "jel");

  private static final List<String> ENDINGS =
      List.of(
          "mann",
          "ov\u00e1",
          "sen",
          "etti",
          "ez",
          "wicz",
          "ard",
          "low",
          "berg",
          "is",
          "aki",
          "nen");

  private static final List<String> GIVEN =
      List.of(
          "Ada",
          "Bruno",
          "Cleo",
          "Dora",
          "Emil",
          "Fritz",
          "Gesa",
          "Hugo",
          "Ines",
          "Jonas",
          "Karl-Uwe",
          "Lotte",
          "Mira",
          "Nils",
          "Olga");

  private final Random random;
  private final List<List<InventedPaper>> files =
      List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
  private final Map<String, InventedPaper> records = new HashMap<>();

  /**
   * Invents searches.
   *
   * @param papers papers, of which a third stands in two files or more
   */
  public InventedSearches(int papers, long seed) {
    random = new Random(seed);
    for (int number = 1; number <= papers; number++) {
      InventedPaper paper = paper(number);
      add(paper);
      int chance = random.nextInt(100);
      if (chance < 35) {
        add(odd(paper));
        if (chance < 10) {
          add(odd(odd(paper)));
        }
      }
      if (chance >= 96) {
        add(relative(paper));
      }
    }
    for (int file = 0; file < files.size(); file++) {
      Collections.shuffle(files.get(file), random);
      for (int at = 0; at < files.get(file).size(); at++) {
        records.put(name(file) + ":" + id(file, at), files.get(file).get(at));
      }
    }
  }

  /** The paper behind each record, by label. */
  public Map<String, InventedPaper> records() {
    return Collections.unmodifiableMap(records);
  }

  /** Texts of the four files by name: RIS, MEDLINE text, BibTeX, CSL-JSON. */
  public List<String> texts() {
    List<String> texts = new ArrayList<>();
    for (int file = 0; file < files.size(); file++) {
      texts.add(InventedText.of(file, files.get(file)));
    }
    return texts;
  }

  public static String name(int file) {
    return List.of("first", "second", "third", "fourth").get(file);
  }

  static String id(int file, int at) {
    return file == 1 ? "" + (50_000_000 + at) : "k" + (char) ('a' + file) + at;
  }

  private void add(InventedPaper paper) {
    files.get(random.nextInt(files.size())).add(paper);
  }

  private <T> T any(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private InventedPaper paper(int number) {
    String subtitle =
        random.nextInt(3) == 0
            ? ""
            : ": " + String.format(Locale.ROOT, any(SUBTITLES), 5 + random.nextInt(150));
    String title =
        switch (random.nextInt(4)) {
          case 0 ->
              "Outcome of "
                  + any(METHODS)
                  + " for "
                  + any(STATES)
                  + " of the "
                  + any(BONES)
                  + " in "
                  + any(PEOPLE);
          case 1 ->
              "Does "
                  + any(METHODS)
                  + " prevent "
                  + any(STATES)
                  + " of the "
                  + any(BONES)
                  + " among "
                  + any(PEOPLE)
                  + "?";
          case 2 ->
              "The "
                  + any(BONES)
                  + " after "
                  + any(STATES)
                  + " and "
                  + any(METHODS)
                  + " in "
                  + any(PEOPLE);
          default ->
              any(PEOPLE)
                  + " with "
                  + any(STATES)
                  + " of the "
                  + any(BONES)
                  + " treated by "
                  + any(METHODS);
        };
    List<String> families = new ArrayList<>();
    List<String> givens = new ArrayList<>();
    for (int count = 1 + random.nextInt(7); count > 0; count--) {
      String name = any(SYLLABLES) + any(SYLLABLES) + any(ENDINGS);
      families.add(
          (random.nextInt(12) == 0 ? "van der " : "")
              + name.substring(0, 1).toUpperCase(Locale.ROOT)
              + name.substring(1));
      givens.add(any(GIVEN) + (random.nextBoolean() ? " " + any(GIVEN) : ""));
    }
    int year = 1990 + random.nextInt(35);
    int page = 1 + random.nextInt(1800);
    List<String> numbers =
        List.of(
            "" + (year - 1975 + random.nextInt(3)),
            "" + (1 + random.nextInt(12)),
            "" + page,
            "" + (page + 2 + random.nextInt(14)));
    String doi =
        random.nextInt(4) == 0
            ? ""
            : String.format(Locale.ROOT, "10.5555/dream.%d.%05d", year, number);
    String pmid = random.nextInt(3) > 0 ? "" : "" + (90_000_000 + number);
    return new InventedPaper(
        number,
        "JOUR",
        title.substring(0, 1).toUpperCase(Locale.ROOT) + title.substring(1) + subtitle,
        families,
        givens,
        any(JOURNALS),
        year,
        numbers,
        doi,
        pmid,
        "");
  }

  /** The same paper with what databases do to it. */
  private InventedPaper odd(InventedPaper paper) {
    InventedPaper odd = random.nextInt(3) > 0 ? paper.withIdentifiers("", "") : paper;
    List<String> numbers = odd.numbers();
    return switch (random.nextInt(16)) {
      case 0 ->
          odd.withPeople(
              odd.families().stream().map(InventedSearches::bare).toList(), odd.givens());
      case 1 ->
          odd.withPeople(
              odd.families().stream().map(InventedSearches::spelledOut).toList(), odd.givens());
      case 2 ->
          odd.withPeople(
              odd.families(), odd.givens().stream().map(InventedSearches::initials).toList());
      case 3 -> odd.withPeople(List.of(), List.of());
      case 4 -> odd.withTitle(odd.title().toUpperCase(Locale.ROOT));
      case 5, 6 -> odd.withTitle(slip(slip(odd.title())));
      case 7 ->
          odd.withTitle(
              odd.title().length() > 50 ? odd.title().substring(0, 45) + "..." : odd.title());
      case 8 -> odd.withTitle(odd.title().split(":")[0]);
      case 9 ->
          odd.withTitle(
              odd.title().replace(": ", " - ").replace("osteomyelitis", "osteo-myelitis"));
      case 10 ->
          odd.withTitle(odd.title().replace("randomised", "randomized").replace("tumour", "tumor"));
      case 11 -> odd.withPlace(odd.place(), odd.year() - 1, List.of("", "", "", ""));
      case 12 ->
          odd.withPeople(
              odd.families().stream().limit(1).toList(), odd.givens().stream().limit(1).toList());
      case 13 ->
          odd.withPlace(odd.place(), odd.year(), List.of(numbers.get(0), "", numbers.get(2), ""));
      case 14 -> odd.withTitle("<b>" + odd.title() + "</b>");
      default -> odd;
    };
  }

  /** Another publication that belongs to a paper. */
  private InventedPaper relative(InventedPaper paper) {
    int number = -paper.number();
    List<String> page = List.of("" + random.nextInt(60), "", "" + (1 + random.nextInt(900)), "");
    InventedPaper other =
        new InventedPaper(
            number,
            paper.kind(),
            paper.title(),
            paper.families(),
            paper.givens(),
            paper.place(),
            paper.year(),
            page,
            "10.5555/aside." + paper.number(),
            "",
            "");
    return switch (random.nextInt(4)) {
      case 0 ->
          other
              .withPlace(
                  "Imagined Congress of Dreamt Limbs|Imagin Congr Dreamt Limbs",
                  paper.year() - 2,
                  page)
              .as("ABST", "");
      case 1 ->
          other
              .withPlace(
                  "Fancied Preprints|Fancied Prepr", paper.year() - 1, List.of("", "", "", ""))
              .as("UNPB", "");
      case 2 ->
          other
              .withTitle("Erratum to: " + paper.title())
              .withPlace(paper.place(), paper.year() + 1, page);
      default ->
          other
              .withTitle("Retraction notice to: " + paper.title())
              .withPlace(paper.place(), paper.year() + 3, page);
    };
  }

  private String slip(String title) {
    int at = 1 + random.nextInt(title.length() - 2);
    if (!Character.isLetter(title.charAt(at)) || !Character.isLetter(title.charAt(at - 1))) {
      return title;
    }
    return random.nextBoolean()
        ? title.substring(0, at) + title.substring(at + 1)
        : title.substring(0, at) + title.charAt(at) + title.substring(at);
  }

  private static String bare(String name) {
    return java.text.Normalizer.normalize(name, java.text.Normalizer.Form.NFD)
        .replaceAll("\\p{M}", "")
        .replace("\u00df", "ss");
  }

  private static String spelledOut(String name) {
    return bare(name.replace("\u00f6", "oe").replace("\u00fc", "ue").replace("\u00e5", "aa"));
  }

  private static String initials(String given) {
    StringBuilder initials = new StringBuilder();
    for (String part : given.split("[ -]")) {
      initials.append(part.charAt(0));
    }
    return initials.toString();
  }
}
