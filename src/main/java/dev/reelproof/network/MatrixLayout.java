package dev.reelproof.network;

/**
 * In which order a Touchstone file writes the entries of a matrix.
 *
 * @param ports how many rows and columns it has
 * @param form which entries are written
 * @param columnsFirst whether a whole matrix stands column by column; of files with two ports only
 */
record MatrixLayout(int ports, Form form, boolean columnsFirst) {

    /** Which entries are written; those left out follow from the reciprocity of the network. */
    enum Form {
        FULL,
        LOWER,
        UPPER
    }

    /** How many numbers a matrix is: two for each entry that is written. */
    int numbers() {
        return form == Form.FULL ? 2 * ports * ports : ports * (ports + 1);
    }

    /**
     * A whole matrix by rows, real and imaginary part in turn.
     *
     * @param written the entries as written; taken over when they stand so already
     */
    double[] byRows(double[] written) {
        if (form == Form.FULL && !columnsFirst) {
            return written;
        }
        double[] whole = new double[2 * ports * ports];
        int next = 0;
        for (int row = 0; row < ports; row++) {
            int first = form == Form.UPPER ? row : 0;
            int last = form == Form.LOWER ? row : ports - 1;
            for (int column = first; column <= last; column++) {
                double re = written[next++];
                double im = written[next++];
                put(whole, columnsFirst ? column : row, columnsFirst ? row : column, re, im);
                if (form != Form.FULL) {
                    put(whole, column, row, re, im);
                }
            }
        }
        return whole;
    }

    private void put(double[] whole, int row, int column, double re, double im) {
        whole[2 * (row * ports + column)] = re;
        whole[2 * (row * ports + column) + 1] = im;
    }
}
