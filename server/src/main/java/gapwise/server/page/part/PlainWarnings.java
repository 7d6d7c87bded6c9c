package gapwise.server.page.part;

import gapwise.analysis.result.Result;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.function.UnaryOperator;

/**
 * Warnings of a plan as a page says them: by the words of warnings.properties for their code, else
 * as the plan says them. The plan, its result and files for programs keep their own, more precise
 * words.
 */
public final class PlainWarnings {
  private static final Properties WORDS = read();

  private PlainWarnings() {}

  /**
   * One warning as a sentence.
   *
   * @param named the name of a group by its level
   */
  public static String sentence(Result.Warning warning, UnaryOperator<String> named) {
    return worded(warning, words(warning.code())).sentence(named);
  }

  /**
   * One warning of curves that were rebuilt, as a sentence that begins with what they are curves
   * of. Where a code means another thing there, its words are its own.
   */
  public static String ofCurves(Result.Warning warning, String named) {
    Result.Warning told =
        new Result.Warning(
            warning.code(),
            warning.message(),
            warning.study(),
            warning.studyId(),
            warning.armId(),
            Optional.of(new Result.Warning.OfGroup(named, warning.message())));
    return worded(told, wordsOfCurves(warning.code())).sentence(level -> level);
  }

  /** The codes that have words of their own. */
  static boolean isWorded(String code) {
    return words(code).isPresent();
  }

  /** Those that have some where curves are told. */
  static boolean isWordedOfCurves(String code) {
    return wordsOfCurves(code).isPresent();
  }

  private static Optional<String> words(String code) {
    return Optional.ofNullable(WORDS.getProperty(code));
  }

  private static Optional<String> wordsOfCurves(String code) {
    return words("curves." + code).or(() -> words(code));
  }

  private static Result.Warning worded(Result.Warning warning, Optional<String> words) {
    return words.map(some -> said(warning, some)).orElse(warning);
  }

  private static Result.Warning said(Result.Warning warning, String words) {
    String message =
        words
            .replace("{study}", warning.study().orElse("one series"))
            .replace("{first}", warning.message().replaceFirst(";.*", ""));
    return new Result.Warning(
        warning.code(),
        message,
        warning.study(),
        warning.studyId(),
        warning.armId(),
        warning.group().map(group -> new Result.Warning.OfGroup(group.level(), message)));
  }

  private static Properties read() {
    Properties words = new Properties();
    try (Reader in =
        new InputStreamReader(
            Objects.requireNonNull(
                PlainWarnings.class.getResourceAsStream("warnings.properties"),
                "warnings.properties"),
            StandardCharsets.UTF_8)) {
      words.load(in);
      return words;
    } catch (IOException e) {
      throw new UncheckedIOException("the words of warnings cannot be read", e);
    }
  }
}
