package gapwise.exchange.form;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Vocabulary;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * One word of a closed list.
 *
 * @param allowed the words that the template offers
 * @param parse reads one of them, or another spelling of it
 * @param word writes one
 */
public record CodeForm<T>(
    List<String> allowed, Function<String, Optional<T>> parse, Function<T, String> word)
    implements CellForm<T> {
  /** As many words as still make a readable message. */
  private static final int MOST_LISTED = 14;

  public static <E extends Enum<E> & Coded> CodeForm<E> of(Class<E> words) {
    List<String> codes = Arrays.stream(words.getEnumConstants()).map(Coded::code).toList();
    return new CodeForm<>(codes, text -> Coded.parse(words, text), Coded::code);
  }

  public static <T extends Coded> CodeForm<T> of(Vocabulary<T> words) {
    List<String> codes = words.all().stream().map(Coded::code).toList();
    return new CodeForm<>(codes, words::parse, Coded::code);
  }

  /** Units that measure one of some things. */
  public static CodeForm<Unit> units(Unit.Dimension... dimensions) {
    List<Unit.Dimension> wanted = List.of(dimensions);
    List<String> symbols =
        Arrays.stream(Unit.values())
            .filter(unit -> wanted.contains(unit.dimension()))
            .map(Unit::symbol)
            .toList();
    return new CodeForm<>(
        symbols,
        text -> Unit.parse(text).filter(unit -> wanted.contains(unit.dimension())),
        Unit::symbol);
  }

  /** Yes or no; a spreadsheet may have made a truth value of it. */
  public static CodeForm<Boolean> yesOrNo() {
    return new CodeForm<>(
        List.of("yes", "no"),
        text ->
            switch (text.toLowerCase(Locale.ROOT)) {
              case "yes", "true" -> Optional.of(true);
              case "no", "false" -> Optional.of(false);
              default -> Optional.empty();
            },
        value -> value ? "yes" : "no");
  }

  /** ISO 4217; too many to offer as a list. */
  public static CodeForm<Currency> currency() {
    return new CodeForm<>(
        List.of(),
        text ->
            Currency.getAvailableCurrencies().stream()
                .filter(currency -> currency.getCurrencyCode().equalsIgnoreCase(text))
                .findFirst(),
        Currency::getCurrencyCode);
  }

  @Override
  public T read(String text) throws UnreadableException {
    Optional<T> value = parse.apply(text);
    if (value.isPresent()) {
      return value.get();
    }
    throw new UnreadableException("unknown-code", expected(text));
  }

  private String expected(String text) {
    if (allowed.isEmpty()) {
      return "a code of three letters such as EUR (ISO 4217) was expected.";
    }
    String nearest =
        Nearest.to(text, allowed).map(word -> "Did you mean " + word + "? ").orElse("");
    String list =
        allowed.size() <= MOST_LISTED
            ? "One of these was expected: " + String.join(", ", allowed) + "."
            : "A code of the list was expected; the sheet readme and the column's drop-down list show"
                + " all "
                + allowed.size()
                + ".";
    return nearest + list;
  }

  @Override
  public String write(T value) {
    return word.apply(value);
  }
}
