package gapwise.budget;

import java.util.function.Function;
import java.util.function.ToIntFunction;

/**
 * What keeps answers that were worked out in one state of the evidence base, so that nobody who
 * asks for the same waits for them again.
 */
public interface Memory {
  /** Keeps nothing: everything is worked out whenever it is asked for. */
  Memory NONE =
      new Memory() {
        @Override
        public <K, T> Kept<K, T> keep(Function<K, T> work, ToIntFunction<T> rows) {
          return new Kept<>() {
            @Override
            public T of(K asked) {
              return work.apply(asked);
            }

            @Override
            public boolean has(K asked) {
              return false;
            }
          };
        }
      };

  /**
   * Answers of one kind.
   *
   * @param work works out what is asked for, the same each time
   * @param rows how many rows of the evidence base an answer holds
   */
  <K, T> Kept<K, T> keep(Function<K, T> work, ToIntFunction<T> rows);

  /** Answers by what is asked for. */
  interface Kept<K, T> {
    /** The answer, which is worked out where it is not there. */
    T of(K asked);

    /** Whether it is there already, so that who asks for it waits for nothing. */
    boolean has(K asked);
  }
}
