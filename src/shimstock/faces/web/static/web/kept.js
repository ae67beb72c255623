// Forms that are kept on the phone while the shed is out of reach. (Written with the reading page.)
"use strict";
