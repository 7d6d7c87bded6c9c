package gapwise.cohort;

import gapwise.cohort.InventedPaper.Patient;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Planted pairs of which papers cannot tell, and pairs that look alike and share nobody. */
final class InventedLookAlikes {
  private final InventedCohorts base;

  InventedLookAlikes(InventedCohorts base) {
    this.base = base;
  }

  void possible() {
    InventedCohorts.Hospital h = base.hospital();
    List<Patient> all = base.drawn(50, 2003, 2011);
    InventedPaper unnamed = base.paper(h, 5, all.subList(0, 30), 2015);
    unnamed.hospitals = List.of();
    unnamed.authors = base.paper(h, 5, all, 2015).authors;
    InventedPaper named = base.paper(h, 5, all.subList(20, 50), 2013);
    named.authors =
        Stream.concat(unnamed.authors.stream().skip(1), h.staff().stream().limit(1))
            .distinct()
            .toList();
    base.pair(
        base.add(unnamed.study()), base.add(named.study()), Verdict.POSSIBLE, "no hospital named");

    InventedCohorts.Hospital undated = base.hospital();
    InventedPaper without = base.paper(undated, 6, base.drawn(25, 2004, 2009), 2012);
    without.tellsYears = false;
    InventedPaper dated = base.paper(undated, 6, base.drawn(25, 2004, 2009), 2012);
    dated.authors = without.authors.subList(0, without.authors.size() - 1);
    base.pair(
        base.add(without.study()), base.add(dated.study()), Verdict.POSSIBLE, "no years given");

    InventedCohorts.Hospital member = base.hospital();
    InventedPaper register = base.paper(member, 7, base.drawn(140, 2001, 2012), 2016);
    register.authors = base.names.people(5);
    register.hospitals =
        Stream.concat(
                Stream.of(member.name()),
                Stream.generate(() -> base.hospital(base.town(), member.country()).name()).limit(5))
            .toList();
    base.pair(
        base.add(register.study()),
        base.add(base.paper(member, 7, base.drawn(25, 2003, 2009), 2012).study()),
        Verdict.POSSIBLE,
        "register that names the hospital");
  }

  void separate() {
    InventedCohorts.Hospital h = base.hospital();
    apart(
        base.paper(h, 0, base.drawn(60, 2004, 2011).stream().filter(Patient::tibia).toList(), 2013),
        base.paper(
            h, 0, base.drawn(70, 2004, 2011).stream().filter(p -> !p.tibia()).toList(), 2014),
        "other bone");
    InventedCohorts.Hospital young = base.hospital();
    List<Patient> children =
        Stream.generate(() -> Patient.drawn(base.random, 2003 * 12, 2010 * 12, true))
            .limit(20)
            .toList();
    apart(
        base.paper(young, 1, children, 2012),
        base.paper(young, 1, base.drawn(25, 2003, 2010), 2012),
        "children and adults");
    InventedCohorts.Hospital clean = base.hospital();
    apart(
        base.paper(
            clean, 3, base.drawn(50, 2003, 2010).stream().filter(Patient::infected).toList(), 2012),
        base.paper(
            clean,
            3,
            base.drawn(50, 2003, 2010).stream().filter(p -> !p.infected()).toList(),
            2013),
        "infected and not");
    InventedCohorts.Hospital other = base.hospital();
    apart(
        base.paper(other, 4, base.drawn(22, 2003, 2009), 2011),
        base.paper(other, 6, base.drawn(26, 2003, 2009), 2012),
        "other method");
    InventedCohorts.Hospital later = base.hospital();
    apart(
        base.paper(later, 2, base.drawn(22, 1996, 2002), 2004),
        base.paper(later, 2, base.drawn(26, 2005, 2011), 2014),
        "years apart");
    InventedCohorts.Hospital home = base.hospital();
    InventedCohorts.Hospital neighbour =
        new InventedCohorts.Hospital(
            "Saint Orbina Clinic, " + home.town(),
            home.town(),
            home.country(),
            base.names.people(10));
    apart(
        base.paper(home, 5, base.drawn(22, 2003, 2009), 2011),
        base.paper(neighbour, 5, base.drawn(24, 2003, 2009), 2011),
        "two hospitals of one town");
    String there = base.town();
    InventedCohorts.Hospital saint =
        new InventedCohorts.Hospital(
            "Hospital of the Three Kings, " + base.town(),
            home.town(),
            home.country(),
            base.names.people(10));
    InventedCohorts.Hospital namesake =
        new InventedCohorts.Hospital(
            "Hospital of the Three Kings, " + there, there, home.country(), base.names.people(10));
    apart(
        base.paper(saint, 6, base.drawn(22, 2003, 2009), 2011),
        base.paper(namesake, 6, base.drawn(24, 2003, 2009), 2012),
        "one name in two towns");
    InventedPaper mine = base.paper(base.hospital(), 7, base.drawn(20, 2005, 2010), 2012);
    InventedPaper yours = base.paper(base.hospital(), 7, base.drawn(20, 2005, 2010), 2013);
    yours.authors = Stream.concat(mine.authors.stream().limit(1), yours.authors.stream()).toList();
    apart(mine, yours, "one name of a first author");
    InventedCohorts.Hospital departments = base.hospital();
    InventedPaper plastic = base.paper(departments, 4, base.drawn(20, 2005, 2010), 2012);
    InventedPaper trauma = base.paper(departments, 4, base.drawn(20, 2005, 2010), 2013);
    trauma.authors = base.names.people(5);
    apart(plastic, trauma, "two departments of one hospital");
  }

  private void apart(InventedPaper one, InventedPaper two, String kind) {
    base.planted.add(
        new InventedCohorts.Planted(
            base.add(one.study()).id(), base.add(two.study()).id(), Optional.empty(), kind));
  }
}
