package gapwise.reference.pair;

import gapwise.reference.format.ReadRecord;

/** Is told what happens while files are read and compared, in the thread that does it. */
public interface Onlooker {
  /** Looks at nothing. */
  Onlooker NONE =
      new Onlooker() {
        @Override
        public void took(RecordKey key, ReadRecord record) {}

        @Override
        public void comparing(int references) {}
      };

  /**
   * A file is read from its start.
   *
   * @param file its place among the files, from 0
   */
  default void opens(int file) {}

  /**
   * A record was taken.
   *
   * @param key which one
   * @param record what became of it, whole, with its abstract and other long texts
   */
  void took(RecordKey key, ReadRecord record);

  /**
   * All files are read, and what they hold is now compared.
   *
   * @param references how many are compared with one another, those of the base among them
   */
  void comparing(int references);
}
