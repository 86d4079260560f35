#include "netmend/board/edit.h"
