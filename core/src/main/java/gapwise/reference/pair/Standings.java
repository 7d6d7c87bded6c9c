package gapwise.reference.pair;

import gapwise.reference.Link;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Papers that were retracted or corrected, or stand under concern: by their own record, by a notice
 * among the records, or because another record of the same paper says so.
 */
final class Standings {
  /** Letters after which no further sentence is added. */
  private static final int LONG = 600;

  private final Map<RecordKey, Profile> profiles = new LinkedHashMap<>();
  private final Map<RecordKey, Map<Standing.Kind, String>> told = new LinkedHashMap<>();

  private Standings(List<Profile> all) {
    all.forEach(profile -> profiles.put(profile.key(), profile));
  }

  static List<Standing> of(List<Profile> all, List<ProposedPair> pairs) {
    Standings standings = new Standings(all);
    all.forEach(standings::byItself);
    pairs.stream().filter(pair -> pair.verdict() == Verdict.RELATED).forEach(standings::byNotice);
    standings.spread(pairs);
    List<Standing> list = new ArrayList<>();
    standings.told.forEach(
        (key, kinds) ->
            kinds.forEach((kind, sentence) -> list.add(new Standing(key, kind, sentence))));
    return List.copyOf(list);
  }

  private void tell(RecordKey key, Standing.Kind kind, String sentence) {
    told.computeIfAbsent(key, none -> new LinkedHashMap<>())
        .merge(
            kind,
            sentence,
            (before, more) ->
                before.contains(more) || before.length() > LONG ? before : before + " " + more);
  }

  private void byItself(Profile profile) {
    if (profile.nature().isNotice()) {
      return;
    }
    for (Link link : profile.links()) {
      of(link.relation())
          .ifPresent(
              kind ->
                  tell(
                      profile.key(),
                      kind,
                      "Its own record says \""
                          + link.relation().words()
                          + ": "
                          + link.text()
                          + "\"."));
    }
    if (profile.saysRetracted()) {
      tell(profile.key(), Standing.Kind.RETRACTED, "Its own record says that it was retracted.");
    }
  }

  private static Optional<Standing.Kind> of(Link.Relation relation) {
    return switch (relation) {
      case RETRACTED_IN -> Optional.of(Standing.Kind.RETRACTED);
      case CORRECTED_IN -> Optional.of(Standing.Kind.CORRECTED);
      case CONCERN_IN -> Optional.of(Standing.Kind.CONCERN);
      default -> Optional.empty();
    };
  }

  private void byNotice(ProposedPair pair) {
    Profile one = profile(pair.first());
    Profile two = profile(pair.second());
    notice(one, two);
    notice(two, one);
  }

  private void notice(Profile notice, Profile paper) {
    if (paper.nature().isNotice()) {
      return;
    }
    Optional<Standing.Kind> kind =
        switch (notice.nature()) {
          case RETRACTION -> Optional.of(Standing.Kind.RETRACTED);
          case CORRECTION -> Optional.of(Standing.Kind.CORRECTED);
          case CONCERN -> Optional.of(Standing.Kind.CONCERN);
          default -> Optional.empty();
        };
    kind.ifPresent(
        found ->
            tell(
                paper.key(),
                found,
                "The record "
                    + notice.key().label()
                    + ", "
                    + notice.nature().words()
                    + ", says so: "
                    + notice.reference().published().line()
                    + notice.doi().map(doi -> ", doi " + doi).orElse("")
                    + "."));
  }

  /** What is told of one copy holds for the others. */
  private void spread(List<ProposedPair> pairs) {
    Map<RecordKey, List<RecordKey>> copies = new HashMap<>();
    for (ProposedPair pair : pairs) {
      if (pair.verdict() == Verdict.SAME) {
        copies.computeIfAbsent(pair.first(), none -> new ArrayList<>()).add(pair.second());
        copies.computeIfAbsent(pair.second(), none -> new ArrayList<>()).add(pair.first());
      }
    }
    List<RecordKey> open = new ArrayList<>(told.keySet());
    while (!open.isEmpty()) {
      RecordKey key = open.remove(open.size() - 1);
      Map<Standing.Kind, String> known = Map.copyOf(told.getOrDefault(key, Map.of()));
      for (RecordKey copy : copies.getOrDefault(key, List.of())) {
        if (profile(copy).nature().isNotice()) {
          continue;
        }
        boolean news = false;
        for (Map.Entry<Standing.Kind, String> entry : known.entrySet()) {
          if (!told.getOrDefault(copy, Map.of()).containsKey(entry.getKey())) {
            tell(
                copy,
                entry.getKey(),
                "A copy of it, " + key.label() + ", is known for this. " + entry.getValue());
            news = true;
          }
        }
        if (news) {
          open.add(copy);
        }
      }
    }
  }

  private Profile profile(RecordKey key) {
    return Objects.requireNonNull(profiles.get(key), "record");
  }
}
