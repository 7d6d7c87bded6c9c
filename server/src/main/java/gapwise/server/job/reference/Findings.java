package gapwise.server.job.reference;

import gapwise.evidence.Citation;
import gapwise.problem.Problem;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.pair.Citations;
import gapwise.reference.pair.ProposedPair;
import gapwise.reference.pair.RecordKey;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.reference.pair.ReferenceProposals.Handled;
import gapwise.reference.pair.Standing;
import gapwise.reference.pair.Verdict;
import gapwise.server.job.reference.ReferencesFound.LogHeld;
import gapwise.server.job.reference.ReferencesFound.Noted;
import gapwise.server.job.reference.ReferencesFound.Pair;
import gapwise.server.job.reference.ReferencesFound.PairKind;
import gapwise.server.job.reference.ReferencesFound.ProblemKind;
import gapwise.server.job.reference.ReferencesFound.Side;
import gapwise.server.job.reference.ReferencesFound.StandingKind;
import gapwise.server.job.reference.ReferencesFound.Told;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Takes from proposals what a page shows of them. */
final class Findings {
  private final ReferenceProposals proposals;
  private final Map<String, Citation> base;
  private final Map<RecordKey, String> lines = new HashMap<>();

  private Findings(ReferenceProposals proposals, Map<String, Citation> base) {
    this.proposals = proposals;
    this.base = base;
  }

  /**
   * What is shown.
   *
   * @param base citations of the evidence base by the id of their study
   * @param log the log of searches, where there is one
   */
  static ReferencesFound of(
      ReferenceProposals proposals, Map<String, Citation> base, Optional<LogHeld> log) {
    Findings findings = new Findings(proposals, base);
    findings.readLines();
    return new ReferencesFound(
        proposals.files().stream().map(Findings::firstOf).toList(),
        base.size(),
        log,
        findings.kinds(),
        findings.standings(),
        findings.pairs());
  }

  /** A file with the first of its problems, so that a damaged file of any length can be kept. */
  private static FileAnswer firstOf(FileAnswer file) {
    return new FileAnswer(
        file.name(),
        file.format(),
        file.encoding(),
        file.read(),
        file.doubtful(),
        file.refused(),
        file.problems().stream().limit(ReferencesFound.MOST_SHOWN).toList());
  }

  private void readLines() {
    for (Handled handled : proposals.records()) {
      if (handled.record() instanceof ReadRecord.Read read) {
        lines.put(handled.key(), read.reference().line());
      }
    }
  }

  private record Kind(boolean refused, String sentence) {}

  /** Counts all and keeps the first. */
  private static final class Counted<T> {
    private final List<T> first = new ArrayList<>();
    private int count;

    void add(T one) {
      count++;
      if (first.size() < ReferencesFound.MOST_SHOWN) {
        first.add(one);
      }
    }
  }

  private List<ProblemKind> kinds() {
    Map<Kind, Counted<Noted>> found = new LinkedHashMap<>();
    for (Handled handled : proposals.records()) {
      boolean refused = handled.record() instanceof ReadRecord.Refused;
      for (Problem problem : handled.record().problems()) {
        found
            .computeIfAbsent(
                new Kind(refused, ProblemWords.of(problem.code())), none -> new Counted<>())
            .add(new Noted(handled.key().file(), problem));
      }
    }
    List<ProblemKind> kinds = new ArrayList<>();
    for (boolean refused : new boolean[] {true, false}) {
      found.forEach(
          (kind, all) -> {
            if (kind.refused() == refused) {
              kinds.add(new ProblemKind(kind.sentence(), refused, all.count, all.first));
            }
          });
    }
    return kinds;
  }

  private List<StandingKind> standings() {
    List<StandingKind> kinds = new ArrayList<>();
    for (Standing.Kind kind : Standing.Kind.values()) {
      Counted<Told> told = new Counted<>();
      for (Standing standing : proposals.standings()) {
        if (standing.kind() == kind) {
          told.add(new Told(side(standing.paper()), standing.sentence()));
        }
      }
      if (told.count > 0) {
        kinds.add(new StandingKind(kind, told.count, told.first));
      }
    }
    return kinds;
  }

  private List<PairKind> pairs() {
    List<PairKind> kinds = new ArrayList<>();
    for (Verdict verdict : Verdict.values()) {
      Counted<Pair> pairs = new Counted<>();
      for (ProposedPair pair : proposals.pairs()) {
        if (pair.verdict() == verdict) {
          pairs.add(new Pair(side(pair.first()), side(pair.second()), pair.reasons()));
        }
      }
      kinds.add(new PairKind(verdict, pairs.count, pairs.first));
    }
    return kinds;
  }

  private Side side(RecordKey key) {
    Optional<String> study = key.id().filter(id -> key.file().equals(RecordKey.BASE));
    String line =
        study
            .flatMap(id -> Optional.ofNullable(base.get(id)).map(one -> line(id, one)))
            .or(() -> Optional.ofNullable(lines.get(key)))
            .orElse("");
    return new Side(key.label(), line, study);
  }

  private static String line(String study, Citation citation) {
    return Citations.reference(study, citation).line();
  }
}
