package gapwise.evidence.vocabulary;

import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The codes of enum constants, each written once, for pages compare them by the hundred. */
final class EnumCodes {
  private static final Map<Enum<?>, String> KNOWN = new ConcurrentHashMap<>();

  private EnumCodes() {}

  static String of(Enum<?> constant) {
    return KNOWN.computeIfAbsent(constant, EnumCodes::written);
  }

  private static String written(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
