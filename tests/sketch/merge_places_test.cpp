#include "merging.h"
