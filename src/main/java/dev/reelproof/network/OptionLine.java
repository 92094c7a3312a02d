package dev.reelproof.network;

import java.util.Locale;

/**
 * What the option line of a Touchstone file says, such as {@code # MHz S RI R 50}.
 *
 * @param unit the unit of frequencies
 * @param format how complex numbers are written
 * @param ohm the reference impedance of all ports, where the file gives none for each
 */
record OptionLine(FrequencyUnit unit, NumberFormat format, double ohm) {
    /** What holds where the line says nothing else. */
    private static final OptionLine DEFAULTS = new OptionLine(FrequencyUnit.GHZ, NumberFormat.MA, 50);

    /**
     * Reads an option line.
     *
     * @param text the line without its sign
     * @param lines for faults and numbers
     * @throws NetworkException when it holds other parameters than S, or a word that it cannot have
     */
    static OptionLine read(String text, TouchstoneLines lines) {
        FrequencyUnit unit = DEFAULTS.unit;
        NumberFormat format = DEFAULTS.format;
        double ohm = DEFAULTS.ohm;
        String[] words = TouchstoneLines.words(text);
        for (int i = 0; i < words.length; i++) {
            String word = words[i].toUpperCase(Locale.ROOT);
            switch (word) {
                case "HZ", "KHZ", "MHZ", "GHZ" -> unit = FrequencyUnit.valueOf(word);
                case "MA", "DB", "RI" -> format = NumberFormat.valueOf(word);
                case "S" -> {
                    // what is wanted
                }
                case "Y", "Z", "G", "H" -> throw lines.fault(
                        "the file holds " + word + "-parameters; export S-parameters (the option line then says 'S')");
                case "R" -> ohm = reference(words, ++i, lines);
                default -> throw lines.fault("the option line says " + TouchstoneLines.quoted(words[i])
                        + "; it is made of Hz, kHz, MHz or GHz, S, MA, DB or RI, and R with the reference impedance");
            }
        }
        return new OptionLine(unit, format, ohm);
    }

    private static double reference(String[] words, int place, TouchstoneLines lines) {
        if (place == words.length) {
            throw lines.fault("the option line ends after 'R'; the reference impedance must follow, such as R 50");
        }
        double ohm = lines.referenceOhm(words[place]);
        if (place + 1 < words.length && TouchstoneLines.isNumber(words[place + 1])) {
            throw lines.fault("the option line gives more than one reference impedance; one file of version 2.0"
                    + " with [Reference] can give one for each port");
        }
        return ohm;
    }
}
