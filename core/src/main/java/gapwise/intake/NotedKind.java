package gapwise.intake;

import gapwise.evidence.rule.Severity;
import gapwise.exchange.Warning;
import gapwise.problem.Problem;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;

/**
 * Everything of one kind that was found in a template, under one sentence, so that a person looks
 * up one question through all papers at a time.
 *
 * @param severity whether it must be mended, or looked up, or may be confirmed
 * @param code the code that all of it has
 * @param sentence what the kind is, for people
 * @param all at least one, in the order in which it was found
 */
public record NotedKind(Severity severity, String code, String sentence, List<Noted> all) {
  /** The sentence of each code, in kinds.properties. */
  private static final Properties SENTENCES = read();

  private static final String OTHER = "other";

  public NotedKind {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(sentence, "sentence");
    all = List.copyOf(all);
    if (all.isEmpty()) {
      throw new IllegalArgumentException("a kind needs something of it, code " + code);
    }
  }

  /**
   * One thing of the kind.
   *
   * @param key what acknowledges it; empty when it must be mended
   * @param problem its place, words, and the study that it is about
   */
  public record Noted(Optional<String> key, Problem problem) {
    public Noted {
      Objects.requireNonNull(key, "key");
      Objects.requireNonNull(problem, "problem");
    }

    /** Study, place and words in one line. */
    public String line() {
      return problem.about().isEmpty() ? problem.line() : problem.about() + ", " + problem.line();
    }
  }

  private record Kind(Severity severity, String code) {}

  /**
   * What is wrong by kind, then what is doubtful by kind, each in the order in which it was found
   * first.
   */
  public static List<NotedKind> of(List<Problem> wrong, List<Warning> doubts) {
    Map<Kind, List<Noted>> found = new LinkedHashMap<>();
    wrong.forEach(
        problem ->
            add(found, new Kind(Severity.IMPOSSIBLE, problem.code()), Optional.empty(), problem));
    doubts.forEach(
        doubt ->
            add(
                found,
                new Kind(
                    doubt.asks() ? Severity.DOUBTFUL : Severity.PROPOSED, doubt.problem().code()),
                Optional.of(doubt.key()),
                doubt.problem()));
    List<NotedKind> kinds = new ArrayList<>();
    found.forEach(
        (kind, all) ->
            kinds.add(new NotedKind(kind.severity(), kind.code(), sentence(kind.code()), all)));
    return List.copyOf(kinds);
  }

  private static void add(
      Map<Kind, List<Noted>> found, Kind kind, Optional<String> key, Problem problem) {
    found.computeIfAbsent(kind, none -> new ArrayList<>()).add(new Noted(key, problem));
  }

  private static String sentence(String code) {
    return SENTENCES.getProperty(code, SENTENCES.getProperty(OTHER));
  }

  /** Whether the kind of this code has a sentence of its own. */
  static boolean isWorded(String code) {
    return SENTENCES.containsKey(code);
  }

  private static Properties read() {
    Properties sentences = new Properties();
    try (Reader in =
        new InputStreamReader(
            NotedKind.class.getResourceAsStream("kinds.properties"), StandardCharsets.UTF_8)) {
      sentences.load(in);
      return sentences;
    } catch (IOException e) {
      throw new UncheckedIOException("the sentences of kinds cannot be read", e);
    }
  }
}
