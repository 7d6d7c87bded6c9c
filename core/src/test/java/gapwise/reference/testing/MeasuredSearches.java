package gapwise.reference.testing;

import gapwise.reference.format.ReferenceFile;
import gapwise.reference.pair.ProposedPair;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.reference.pair.Verdict;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Proposals for invented searches held against what was invented.
 *
 * @param records records read
 * @param copies pairs of records of one paper
 * @param copiesSame of these proposed as the same
 * @param copiesOtherwise of these proposed otherwise
 * @param relatives pairs of a paper and what belongs to it
 * @param relativesFound of these proposed as related
 * @param falseSame pairs proposed as the same that are not
 * @param falseOther other pairs proposed that have nothing to do with each other
 * @param seconds seconds of computing, reading included
 * @param examples some pairs that were missed or false
 */
public record MeasuredSearches(
    int records,
    int copies,
    int copiesSame,
    int copiesOtherwise,
    int relatives,
    int relativesFound,
    int falseSame,
    int falseOther,
    double seconds,
    List<String> examples) {

  public static MeasuredSearches of(InventedSearches searches) throws IOException {
    List<ReferenceFile> files = new ArrayList<>();
    List<String> texts = searches.texts();
    for (int file = 0; file < texts.size(); file++) {
      files.add(ReferenceFile.of(InventedSearches.name(file) + ".txt", texts.get(file)));
    }
    ThreadMXBean clock = ManagementFactory.getThreadMXBean();
    long start = clock.getCurrentThreadCpuTime();
    ReferenceProposals proposals = ReferenceProposals.of(files);
    double seconds = (clock.getCurrentThreadCpuTime() - start) / 1e9;
    Map<String, InventedPaper> papers = new HashMap<>();
    Map<Integer, List<String>> labels = new TreeMap<>();
    for (ReferenceProposals.Handled handled : proposals.records()) {
      String label = handled.key().label();
      InventedPaper paper = paper(searches, handled);
      papers.put(label, paper);
      labels.computeIfAbsent(paper.number(), none -> new ArrayList<>()).add(label);
    }
    return count(proposals, papers, labels, seconds);
  }

  private static InventedPaper paper(
      InventedSearches searches, ReferenceProposals.Handled handled) {
    String file = handled.key().file().replace(".txt", "");
    int index = List.of("first", "second", "third", "fourth").indexOf(file);
    return searches
        .records()
        .get(file + ":" + InventedSearches.id(index, handled.record().number() - 1));
  }

  private static MeasuredSearches count(
      ReferenceProposals proposals,
      Map<String, InventedPaper> papers,
      Map<Integer, List<String>> labels,
      double seconds) {
    Set<String> same = new HashSet<>();
    Set<String> related = new HashSet<>();
    Map<String, Verdict> verdicts = new HashMap<>();
    for (ProposedPair pair : proposals.pairs()) {
      verdicts.put(key(pair.first().label(), pair.second().label()), pair.verdict());
    }
    for (Map.Entry<Integer, List<String>> entry : labels.entrySet()) {
      for (String one : entry.getValue()) {
        entry.getValue().stream()
            .filter(two -> one.compareTo(two) < 0)
            .forEach(two -> same.add(key(one, two)));
        if (entry.getKey() > 0) {
          labels
              .getOrDefault(-entry.getKey(), List.of())
              .forEach(two -> related.add(key(one, two)));
        }
      }
    }
    int[] counts = new int[5];
    List<String> examples = new ArrayList<>();
    for (String pair : same) {
      Verdict verdict = verdicts.get(pair);
      counts[0] += verdict == Verdict.SAME ? 1 : 0;
      counts[1] += verdict != null && verdict != Verdict.SAME ? 1 : 0;
      if (verdict != Verdict.SAME) {
        examples.add(
            (verdict == null ? "missed " : "only " + verdict.word() + " ") + shown(pair, papers));
      }
    }
    for (String pair : related) {
      counts[2] += verdicts.get(pair) == Verdict.RELATED ? 1 : 0;
      if (verdicts.get(pair) != Verdict.RELATED) {
        examples.add("relative " + verdicts.get(pair) + " " + shown(pair, papers));
      }
    }
    for (Map.Entry<String, Verdict> entry : verdicts.entrySet()) {
      if (!same.contains(entry.getKey())
          && !(related.contains(entry.getKey()) && entry.getValue() != Verdict.SAME)) {
        counts[entry.getValue() == Verdict.SAME ? 3 : 4]++;
        examples.add("false " + entry.getValue().word() + " " + shown(entry.getKey(), papers));
      }
    }
    return new MeasuredSearches(
        proposals.records().size(),
        same.size(),
        counts[0],
        counts[1],
        related.size(),
        counts[2],
        counts[3],
        counts[4],
        seconds,
        examples);
  }

  private static String key(String one, String two) {
    return one.compareTo(two) < 0 ? one + " + " + two : two + " + " + one;
  }

  private static String shown(String pair, Map<String, InventedPaper> papers) {
    String[] labels = pair.split(" \\+ ");
    return "\n    " + papers.get(labels[0]) + "\n    " + papers.get(labels[1]);
  }

  /** Measures searches of some sizes: numbers of papers, or none for 300, 3,000 and 30,000. */
  public static void main(String[] sizes) throws IOException {
    of(new InventedSearches(300, 1));
    for (String size : sizes.length == 0 ? new String[] {"300", "3000", "30000"} : sizes) {
      MeasuredSearches measured = of(new InventedSearches(Integer.parseInt(size), 7));
      System.out.printf(
          Locale.ROOT,
          "%,d records: copies %,d of %,d same, %,d otherwise; relatives %,d of %,d; false same"
              + " %,d, false other %,d; %.1f s%n",
          measured.records,
          measured.copiesSame,
          measured.copies,
          measured.copiesOtherwise,
          measured.relativesFound,
          measured.relatives,
          measured.falseSame,
          measured.falseOther,
          measured.seconds);
      measured.examples.stream()
          .filter(
              text ->
                  text.startsWith("false")
                      || text.startsWith(System.getProperty("kind", "missed"))
                      || text.startsWith("rel"))
          .limit(Integer.getInteger("examples", 8))
          .forEach(System.out::println);
    }
  }
}
